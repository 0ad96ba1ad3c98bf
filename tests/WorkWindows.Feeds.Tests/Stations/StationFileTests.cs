using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Stations;
using static WorkWindows.Engine.Weather.DailyElement;

namespace WorkWindows.Feeds.Tests.Stations;

/// <summary>Values were read by eye from the lines quoted (NOAA, GHCN-Daily, doi:10.7289/V5D21VHZ).</summary>
public class StationFileTests
{
    private static readonly StationRecord StateCollege = ReadReference("stations/dly/USC00368449.dly");
    private static readonly StationRecord MinneapolisCore = ReadReference("stations/dly/USW00014922.core.dly");
    private static readonly StationRecord MinneapolisFull = ReadReference("stations/dly/USW00014922.full.dly.gz");

    public static TheoryData<string, DailyElement, double?> StateCollegeValues => new()
    {
        // line 401: USC00368449200402TMAX  -83  0  -11  0    0  0   22  0    6  0   -6  0 … 122  0-9999   -9999
        { "2004-02-01", MaxTemperatureC, -8.3 },
        { "2004-02-02", MaxTemperatureC, -1.1 },
        { "2004-02-03", MaxTemperatureC, 0.0 },
        { "2004-02-29", MaxTemperatureC, 12.2 },
        // line 402: USC00368449200402TMIN -144  0 -122  0 -111  0  -28  0 …
        { "2004-02-01", MinTemperatureC, -14.4 },
        { "2004-02-04", MinTemperatureC, -2.8 },
        { "2004-02-29", MinTemperatureC, -5.6 },
        // line 485: USC00368449200501TMAX  128  0 … -11  0   33  0
        { "2005-01-01", MaxTemperatureC, 12.8 },
        { "2005-01-31", MaxTemperatureC, 3.3 },
        // line 613: USC00368449200606TMAX, day 11: -9999
        { "2006-06-11", MaxTemperatureC, null },
        // line 459: USC00368449200409PRCP, day 18: " 1283  0"; line 4: 200001, day 6: "    0T 0", a trace
        { "2004-09-18", PrecipitationMm, 128.3 },
        { "2000-01-06", PrecipitationMm, 0.0 },
        // line 88: USC00368449200012PRCP, day 3: "    0P 0"; line 6: 200001SNWD, day 1: the same, day 5: "    0  0"
        { "2000-12-03", PrecipitationMm, null },
        { "2000-01-01", SnowDepthCm, null },
        { "2000-01-05", SnowDepthCm, 0.0 },
        // line 406: USC00368449200402SNWD, day 4: "  508  0"
        { "2004-02-04", SnowDepthCm, 50.8 },
    };

    public static TheoryData<string, DailyElement, double?> MinneapolisValues => new()
    {
        // line 1 of the core file: USW00014922193804TMAX-9999 (eight days)  106  0  189  0 … 222  0-9999
        { "1938-04-08", MaxTemperatureC, null },
        { "1938-04-09", MaxTemperatureC, 10.6 },
        { "1938-04-30", MaxTemperatureC, 22.2 },
        // line 3611 of the core file: USW00014922199601TMIN  -28  0 -156  0 … -289  0 -306  0
        { "1996-01-01", MinTemperatureC, -2.8 },
        { "1996-01-31", MinTemperatureC, -30.6 },
        // lines 11455, 11456: USW00014922199907WSF2   94  X   67  X  179  X …; WSF5  107  X   80  X  232  W …
        { "1999-07-01", WindMps, 9.4 },
        { "1999-07-03", WindMps, 17.9 },
        { "1999-07-03", GustMps, 23.2 },
        // line 8235: USW00014922198707PRCP, day 23: " 2324  0"; line 6809: 198201SNWD, day 23: "  965  0"
        { "1987-07-23", PrecipitationMm, 232.4 },
        { "1982-01-23", SnowDepthCm, 96.5 },
        // line 173: USW00014922194102PRCP, day 1: "    0P 0"
        { "1941-02-01", PrecipitationMm, null },
        // line 6640: USW00014922198104WSFG  159  X  118  X  200  X …
        { "1981-04-03", GustMps, 20.0 },
    };

    [Theory]
    [MemberData(nameof(StateCollegeValues))]
    public void Read_GivesHandReadValues_OfStateCollege(string date, DailyElement element, double? value) =>
        Assert.Equal(value, Value(StateCollege, date, element));

    [Theory]
    [MemberData(nameof(MinneapolisValues))]
    public void Read_GivesHandReadValues_OfMinneapolis(string date, DailyElement element, double? value) =>
        Assert.Equal(value, Value(MinneapolisFull, date, element));

    [Fact]
    public void Read_KeepsARejectedValueWithItsFlag() =>
        // line 490: USC00368449200501SNWD, day 31: "    0 I0"; line 496: 200502SNWD, day 1: "   76 I0"
        // line 582: USC00368449200602TMAX, day 18: "  106 I0"
        Assert.Equal(
            [
                new(new(2005, 1, 31), SnowDepthCm, 0, 'I'),
                new(new(2005, 2, 1), SnowDepthCm, 7.6, 'I'),
                new(new(2006, 2, 18), MaxTemperatureC, 10.6, 'I'),
            ],
            StateCollege.Readings.Where(reading => reading.QualityFlag is not null));

    [Fact]
    public void Read_LeavesOutTheMonthThatTheFileLacks()
    {
        Assert.DoesNotContain(StateCollege.Readings, reading => reading.Date is { Year: 2000, Month: 5 });
        Assert.Contains(StateCollege.Readings, reading => reading.Date == new LocalDate(2000, 6, 1));
    }

    [Fact]
    public void Read_CountsLines()
    {
        Assert.Equal("USC00368449", StateCollege.StationId);
        Assert.Equal((960, 476), (StateCollege.LinesRead, StateCollege.LinesUsed));
        Assert.Equal((15426, 4448), (MinneapolisFull.LinesRead, MinneapolisFull.LinesUsed));
    }

    [Fact]
    public void Read_GivesTheSame_WhetherElementsWereLeftOutBeforeOrNot() =>
        Assert.Equal(
            MinneapolisFull.Readings.Where(reading => reading.Element is not (WindMps or GustMps)),
            MinneapolisCore.Readings);

    [Fact]
    public void Read_GivesEachDateAndElementOnce_Ascending()
    {
        var keys = MinneapolisFull.Readings.Select(reading => (reading.Date, reading.Element)).ToList();
        Assert.Equal(keys.Distinct().Order(), keys);
    }

    [Fact]
    public void Read_LeavesOutTheMeanWind() =>
        Assert.DoesNotContain(MinneapolisCore.Readings, reading => reading.Element is WindMps or GustMps);

    [Theory]
    [InlineData("  120  X", "  150  X", 15.0, null)]
    [InlineData("  150  X", "  120  X", 15.0, null)]
    [InlineData("  150 XX", "  120  X", 12.0, null)]     // the stronger was rejected
    [InlineData("  150 XX", "  120 XX", 15.0, 'X')]
    [InlineData("-9999   ", "  120  X", 12.0, null)]
    public void Read_TakesTheStrongerUsableGust_OfADay(string fiveSecond, string peak, double value, char? flag)
    {
        var import = StationText.Read(
            StationText.Dly("USW00014922199907WSF5", (4, fiveSecond)),
            StationText.Dly("USW00014922199907WSFG", (4, peak)));
        Assert.Equal([new DailyReading(new LocalDate(1999, 7, 4), GustMps, value, flag)], import.Station!.Readings);
    }

    [Fact]
    public void Read_TakesRainSnowAndHumidity_InTheirOwnUnits()
    {
        var station = StationText.Read(
            StationText.Dly("USW00014922201907PRCP", (4, "  127  W"), (5, "    0T W"), (6, "    0P W")),
            StationText.Dly("USW00014922201907SNWD", (4, "   25  W")),
            StationText.Dly("USW00014922201907RHMN", (4, "   38  W"), (5, "  100  W")),
            StationText.Dly("USW00014922201907MDPR", (7, "  300  W"))).Station!;
        Assert.Equal(
            [
                new(new(2019, 7, 4), PrecipitationMm, 12.7, null),
                new(new(2019, 7, 4), SnowDepthCm, 2.5, null),
                new(new(2019, 7, 4), MinHumidityPercent, 38, null),
                new(new(2019, 7, 5), PrecipitationMm, 0, null),
                new(new(2019, 7, 5), MinHumidityPercent, 100, null),
            ],
            station.Readings);
        Assert.Equal((4, 3), (station.LinesRead, station.LinesUsed));
    }

    [Fact]
    public void Read_PadsALine_WhoseTrailingBlanksWereTrimmed()
    {
        var trimmed = StationText.Dly("USW00014922199907TMIN", (31, "  100")).TrimEnd();
        Assert.Equal(266, trimmed.Length);
        Assert.Equal(10.0, Value(StationText.Read(trimmed).Station!, "1999-07-31", MinTemperatureC));
    }

    [Fact]
    public void Read_AcceptsCarriageReturns() =>
        Assert.Equal(2.5, Value(
            StationText.Read("USW00014922,19990704,TMIN,25,,,W,2400\r", "USW00014922,19990705,TMIN,30,,,W\r").Station!,
            "1999-07-04", MinTemperatureC));

    [Fact]
    public void Read_AcceptsCsv_WithOrWithoutTheHourOfObservation()
    {
        var station = StationText.Read(
            "USC00368449,20040201,TMAX,-83,,,0,0700",
            "USC00368449,20040201,TMIN,-144,,,0",
            "USC00368449,20040202,TMIN,-9999,,,0,",
            "USC00368449,20040203,TMIN,-111,,G,0,0700",
            "USC00368449,20040203,PRCP,0,T,,0,0700",
            "USC00368449,20040203,SNWD,0,P,,0,0700",
            "USC00368449,20040203,SNOW,0,,,0,0700").Station!;
        Assert.Equal(
            [
                new(new(2004, 2, 1), MinTemperatureC, -14.4, null),
                new(new(2004, 2, 1), MaxTemperatureC, -8.3, null),
                new(new(2004, 2, 3), MinTemperatureC, -11.1, 'G'),
                new(new(2004, 2, 3), PrecipitationMm, 0, null),
            ],
            station.Readings);
        Assert.Equal((7, 6), (station.LinesRead, station.LinesUsed));
    }

    private static double? Value(StationRecord station, string date, DailyElement element) =>
        station.Readings
            .Where(reading => reading.Date.ToString("yyyy-MM-dd", null) == date && reading.Element == element)
            .Select(reading => (double?)reading.Value)
            .SingleOrDefault();

    private static StationRecord ReadReference(string path)
    {
        using var stream = File.OpenRead(ProjectFiles.Reference(path));
        var import = StationFile.Read(stream);
        Assert.True(import.IsAccepted, import.Faults.ToString());
        return import.Station;
    }
}
