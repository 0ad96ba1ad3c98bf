using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Stations;
using static WorkWindows.Engine.Weather.DailyElement;

namespace WorkWindows.Feeds.Tests.Stations;

/// <summary>
/// Files with a column for each element. Values were read by eye from the lines quoted (NOAA, GHCN-Daily,
/// doi:10.7289/V5D21VHZ); what is absent was counted in the files.
/// </summary>
public class WideFileTests
{
    private const string AnnArbor = "stations/noaa-csv/USC00200230_ann_arbor_cdo_degF.csv";
    private const string Milwaukee = "stations/noaa-csv/USW00014839_milwaukee_wide_degF.csv";
    private const string Ohare = "stations/noaa-csv/USW00094846_ohare_access_degF.csv";
    private const string Botanic = "stations/noaa-csv/USC00111497_chicago_botanic_access_degF.csv";

    private const string Heading = "\"STATION\",\"NAME\",\"DATE\",\"TMAX\",\"TMAX_ATTRIBUTES\",\"TMIN\"";

    [Theory]
    [InlineData(AnnArbor, "USC00200230", 47739, 294, 124, 163, 4)]
    [InlineData(Milwaukee, "USW00014839", 32283, 0, 1, 0, 0)]
    [InlineData(Ohare, "USW00094846", 8884, 0, 0, 0, 0)]
    [InlineData(Botanic, "USC00111497", 8882, 3, 10, 11, 2)]
    public void Read_LeavesOutWhatIsAbsent(
        string path, string id, int lines, int absentDays, int withoutMaximum, int withoutMinimum, int upsideDown)
    {
        var station = ReadReference(path, id);

        Assert.Equal((id, lines), (station.StationId, station.LinesUsed));
        var maxima = Of(station, MaxTemperatureC);
        var minima = Of(station, MinTemperatureC);
        Assert.Equal((withoutMaximum, withoutMinimum), (lines - maxima.Count, lines - minima.Count));
        // They are kept as they stand: to judge them is another's task.
        Assert.Equal(upsideDown, minima.Count(day => maxima.TryGetValue(day.Key, out var max) && day.Value > max));
        Assert.Equal(lines + absentDays, Period.DaysBetween(station.Readings[0].Date, station.Readings[^1].Date) + 1);
    }

    public static TheoryData<string, string, DailyElement, double> Values => new()
    {
        // "USC00200230","ANN ARBOR U OF MICH, MI US","1891-10-04","0.30",,"73","52"
        { AnnArbor, "1891-10-04", MaxTemperatureC, (73 - 32) / 1.8 },
        { AnnArbor, "1891-10-04", PrecipitationMm, 0.30 * 25.4 },
        // 1938,04,06,1938-04-06,96,0.09055123000000001,0,0,32,28.04
        { Milwaukee, "1938-04-06", MinTemperatureC, -2.2 },
        { Milwaukee, "1938-04-06", MaxTemperatureC, 0 },
        { Milwaukee, "1938-04-06", PrecipitationMm, 2.3 },
        // "USC00111497","1995-01-04","0.00","0.0","1.0","18","-1","1",
        { Botanic, "1995-01-04", MinTemperatureC, -33 / 1.8 },
        { Botanic, "1995-01-04", SnowDepthCm, 2.54 },
        // "USW00094846","1995-01-06","10.51","0.25","3.3","1.0","27","18",,
        { Ohare, "1995-01-06", PrecipitationMm, 6.35 },
    };

    [Theory]
    [MemberData(nameof(Values))]
    public void Read_GivesHandReadValues(string path, string date, DailyElement element, double value) =>
        Assert.Equal(value, ReadReference(path, "USW00014839").Readings
            .Single(reading => reading.Date.ToString("uuuu-MM-dd", null) == date && reading.Element == element).Value, 5);

    [Fact]
    public void Read_TakesTheFastestWindInMph_AndNotTheMean()
    {
        var file = StationText.Read(
            "STATION,DATE,AWND,WSF2,WSF5", "USW00094846,2019-04-28,12.30,32.0,45.0");
        Assert.Equal("units", Assert.Single(file.Faults.Faults).Field);

        var station = StationText.Read(
            new StationFileHints(Units: StationUnits.Standard),
            "STATION,DATE,AWND,WSF2,WSF5", "USW00094846,2019-04-28,12.30,32.0,45.0").Station!;
        Assert.Equal(
            [(WindMps, 14.305), (GustMps, 20.117)],
            station.Readings.Select(reading => (reading.Element, Math.Round(reading.Value, 3))));
    }

    [Theory]
    [InlineData(StationUnits.Tenths, "  200", "   61")]
    [InlineData(StationUnits.Metric, "20.0", "6.1")]
    [InlineData(StationUnits.Standard, "68", "42.98")]
    public void Read_GivesTheSame_InEachUnit(StationUnits units, string max, string min)
    {
        var station = StationText.Read(
            new StationFileHints(Units: units), Heading,
            $"\"USW00023174\",\"LOS ANGELES, CA US\",\"2020-12-31\",\"{max}\",\",,W,2400\",\"{min}\"").Station!;
        Assert.Equal(
            [new(new(2020, 12, 31), MinTemperatureC, 6.1, null), new(new(2020, 12, 31), MaxTemperatureC, 20, null)],
            station.Readings);
    }

    [Theory]
    [InlineData(",I,W", "I")]
    [InlineData(",,W", null)]
    [InlineData("", null)]
    [InlineData("H,X,S,2400", "X")]
    [InlineData("P,,0", "absent")]
    public void Read_TakesTheFlagsOfAValue(string attributes, string? expected)
    {
        var station = StationText.Read(
            new StationFileHints(Units: StationUnits.Metric), Heading,
            $"USW00023174,X,2020-12-31,20.0,\"{attributes}\",").Station!;
        Assert.Equal(
            expected, station.Readings is [var reading] ? reading.QualityFlag?.ToString() : "absent");
    }

    [Theory]
    [InlineData("USW00023174,X,2020-12-32,20.0,,", "DATE", "2020-12-32")]
    [InlineData("USW00023174,X,12/31/2020,20.0,,", "DATE", "12/31/2020")]
    [InlineData("USW0002317,X,2020-12-31,20.0,,", "STATION", "USW0002317")]
    [InlineData("USW00014922,X,2020-12-31,20.0,,", "station", "USW00014922")]
    [InlineData("USW00023174,X,2020-12-31,68.0,,", "TMAX", "68")]
    [InlineData("USW00023174,X,2020-12-31,T,,", "TMAX", "T")]
    [InlineData("USW00023174,X,2020-12-31,Infinity,\",X,\",", "TMAX", "Infinity")]
    [InlineData("USW00023174,X,2020-12-31,20.0,WW,", "TMAX_ATTRIBUTES", "WW")]
    [InlineData("USW00023174,X,2020-12-30,20.0,,", "TMAX", "2020-12-30")]
    [InlineData("USW00023174,X,2020-12-31,20.0,", "line", "USW00023174,X,2020-12-31,20.0,")]
    public void Read_NamesWhatIsWrong(string line, string field, string value)
    {
        var import = StationText.Read(
            new StationFileHints(Units: StationUnits.Metric), Heading, "USW00023174,X,2020-12-30,19.0,,", line);
        var fault = Assert.Single(import.Faults.Faults);
        Assert.Equal((3, field, value), (fault.Line, fault.Field, fault.Value));
        Assert.Null(import.Station);
    }

    [Fact]
    public void Read_NamesTheLine_WhoseQuoteIsNotClosed()
    {
        var import = StationText.Read(
            new StationFileHints(Units: StationUnits.Metric), Heading, "USW00023174,\"X,2020-12-31,20.0,,",
            "USW00023174,X,2021-01-01,20.0,,");
        Assert.All(import.Faults.Faults, fault => Assert.Equal((2, "line"), (fault.Line, fault.Field)));
        Assert.NotEmpty(import.Faults.Faults);
    }

    [Theory]
    [InlineData("DATE,TMAX", "no STATION, and no station was named")]
    [InlineData("STATION,DATE,TMAX,TMAX", "TMAX")]
    public void Read_NamesTheColumn_ThatIsAbsentOrRepeated(string heading, string value)
    {
        var faults = StationText.Read(new StationFileHints(Units: StationUnits.Metric), heading, "").Faults.Faults;
        Assert.Equal((1, "column", value), (faults[0].Line, faults[0].Field, faults[0].Value));
    }

    private static Dictionary<LocalDate, double> Of(StationRecord station, DailyElement element) => station.Readings
        .Where(reading => reading.Element == element).ToDictionary(reading => reading.Date, reading => reading.Value);

    private static StationRecord ReadReference(string path, string id)
    {
        using var stream = File.OpenRead(ProjectFiles.Reference(path));
        var import = StationFile.Read(stream, new(id, StationUnits.Standard));
        Assert.True(import.IsAccepted, import.Faults.ToString());
        return import.Station;
    }
}
