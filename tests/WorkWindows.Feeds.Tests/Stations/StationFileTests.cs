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
    public void Read_KeepsARejectedValueWithItsFlag()
    {
        // line 582: USC00368449200602TMAX, day 18: "  106 I0"
        var reading = StateCollege.Readings.Single(reading => reading.QualityFlag is not null);
        Assert.Equal(new DailyReading(new LocalDate(2006, 2, 18), MaxTemperatureC, 10.6, 'I'), reading);
    }

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
        Assert.Equal((960, 238), (StateCollege.LinesRead, StateCollege.LinesUsed));
        Assert.Equal((15426, 2610), (MinneapolisFull.LinesRead, MinneapolisFull.LinesUsed));
    }

    [Fact]
    public void Read_GivesTheSameTemperatures_WhetherElementsWereLeftOutBeforeOrNot() =>
        Assert.Equal(
            MinneapolisFull.Readings.Where(reading => reading.Element is MinTemperatureC or MaxTemperatureC),
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
            "USC00368449,20040203,PRCP,0,T,,0,0700").Station!;
        Assert.Equal(
            [
                new(new(2004, 2, 1), MinTemperatureC, -14.4, null),
                new(new(2004, 2, 1), MaxTemperatureC, -8.3, null),
                new(new(2004, 2, 3), MinTemperatureC, -11.1, 'G'),
            ],
            station.Readings);
        Assert.Equal((5, 4), (station.LinesRead, station.LinesUsed));
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
