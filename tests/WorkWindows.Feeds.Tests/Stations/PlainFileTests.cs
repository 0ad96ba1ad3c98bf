using System.Globalization;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Stations;
using static WorkWindows.Engine.Weather.DailyElement;

namespace WorkWindows.Feeds.Tests.Stations;

public class PlainFileTests
{
    private static readonly StationFileHints Own = new("USC00999999");

    [Fact]
    public void Read_TakesElementsInTheUnitsOfTheHeading()
    {
        var station = StationText.Read(
            Own,
            "date,minTemperature [degF],maxTemperature [degC],wind [km/h],gust [kn],precipitation [in],snowDepth [mm],"
            + "minHumidity [%]",
            "2026-01-31,20,3.5,36,20,0.10,25,38", "2026-02-01,,,,,,,40").Station!;
        Assert.Equal(
            [
                new(new(2026, 1, 31), MinTemperatureC, -6.666666667, null),
                new(new(2026, 1, 31), MaxTemperatureC, 3.5, null),
                new(new(2026, 1, 31), WindMps, 10, null),
                new(new(2026, 1, 31), GustMps, 10.288888889, null),
                new(new(2026, 1, 31), PrecipitationMm, 2.54, null),
                new(new(2026, 1, 31), SnowDepthCm, 2.5, null),
                new(new(2026, 1, 31), MinHumidityPercent, 38, null),
                new(new(2026, 2, 1), MinHumidityPercent, 40, null),
            ],
            station.Readings);
    }

    [Theory]
    [InlineData("date", "2026-02-28", "2026-02-28")]
    [InlineData("date [M/d/yyyy]", "2/28/2026", "2026-02-28")]
    [InlineData("dayStart", "2026-02-27 23:00", "2026-02-28")]
    [InlineData("dayStart", "2026-02-28 00:00", "2026-02-28")]
    [InlineData("dayStart", "2026-02-28 01:00", "2026-02-28")]
    [InlineData("dayStart", "2026-02-28", "2026-02-28")]
    [InlineData("dayStart [M/d/yyyy]", "2/28/2026 0:00", "2026-02-28")]
    [InlineData("dayStart [M/d/yyyy]", "12/31/2025 23:00", "2026-01-01")]
    public void Read_KnowsTheDay(string heading, string text, string day) =>
        Assert.Equal(day, StationText.Read(Own, $"{heading},gust [m/s]", $"{text},1").Station!.Readings.Single()
            .Date.ToString("uuuu-MM-dd", null));

    [Theory]
    [InlineData("2026-02-29,1,1", "date", "2026-02-29")]
    [InlineData("2/28/2026,1,1", "date", "2/28/2026")]
    [InlineData("2026-02-27 23:00,1,1", "date", "2026-02-27 23:00")]
    [InlineData("2026-02-28,\"1,5\",1", "minTemperature [degC]", "1,5")]
    [InlineData("2026-02-28,1e2,1", "minTemperature [degC]", "1e2")]
    [InlineData("2026-02-28,61,1", "minTemperature [degC]", "61")]
    [InlineData("2026-02-28,1,-2", "gust [mph]", "-2")]
    [InlineData("2026-02-27,1,", "TMIN", "2026-02-27")]
    [InlineData("2026-02-28,1", "line", "2026-02-28,1")]
    public void Read_NamesLineColumnAndAcceptedForm(string line, string field, string value)
    {
        var fault = Assert.Single(StationText.Read(
            Own, "date,minTemperature [degC],gust [mph]", "2026-02-27,1,1", line).Faults.Faults);
        Assert.Equal((3, field, value), (fault.Line, fault.Field, fault.Value));
    }

    [Theory]
    [InlineData("date,minTemperature", "column", "minTemperature")]
    [InlineData("date,minTemperature [F]", "column", "minTemperature [F]")]
    [InlineData("date,gust [m/s],gust [mph]", "column", "gust [mph]")]
    [InlineData("date,dayStart,gust [m/s]", "columns", "date,dayStart,gust [m/s]")]
    public void Read_NamesTheColumn_ThatItDoesNotKnow(string heading, string field, string value)
    {
        var faults = StationText.Read(Own, heading, "2026-02-27,1").Faults.Faults;
        Assert.Contains((1, field, value), faults.Select(fault => (fault.Line!.Value, fault.Field, fault.Value)));
    }

    [Fact]
    public void Read_AsksWhoseFileItIs() =>
        Assert.Equal(
            "line 1: station 'not said': say which station the file is of; it does not",
            StationText.Read("date,gust [m/s]", "2026-02-28,1").Faults.ToString());

    /// <summary>
    /// 8,225 rows of Millbrook are stamped 23:00 of the day before theirs (Kelly 2025,
    /// doi:10.25390/caryinstitute.11553219).
    /// </summary>
    [Fact]
    public void Read_PutsTheRowsOfMillbrook_ThatAreStampedAtElevenPm_OnTheirDay()
    {
        var rows = File.ReadLines(ProjectFiles.Reference("stations/cary/cary_met_data_daily.csv")).Skip(1)
            .Select(line => line.Split(',')).ToList();
        Assert.Equal(8225, rows.Count(row => row[0].EndsWith(" 23:00", StringComparison.Ordinal)));

        // Columns DATE, MAX_TEMP and MIN_TEMP.
        var station = StationText.Read(
            Own, ["dayStart [M/d/yyyy],maxTemperature [degC],minTemperature [degC]",
                .. rows.Select(row => $"{row[0]},{row[8]},{row[10]}")]).Station!;

        Assert.Equal(rows.Count, station.LinesUsed);
        Assert.Equal(
            rows.Where(row => row[8] != "" || row[10] != "").Select(row => AddHour(row[0])).Distinct(),
            station.Readings.Select(reading => reading.Date).Distinct());
    }

    /// <summary>The date an hour after the stamp.</summary>
    private static LocalDate AddHour(string stamp) =>
        LocalDateTime.FromDateTime(DateTime.Parse(stamp, CultureInfo.InvariantCulture)).PlusHours(1).Date;
}
