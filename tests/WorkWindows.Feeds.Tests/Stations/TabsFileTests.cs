using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Stations;
using static WorkWindows.Engine.Weather.DailyElement;

namespace WorkWindows.Feeds.Tests.Stations;

/// <summary>Files with tabs; what is absent was counted in the files.</summary>
public class TabsFileTests
{
    [Theory]
    [InlineData("USC00111280", 1461, 134, 2)]
    [InlineData("USC00125237", 92, 1378, 27)]
    [InlineData("USC00336196", 0, 2068, 11)]
    public void Read_LeavesOutWhatIsAbsent(string id, int absentDays, int withoutMaximum, int upsideDown)
    {
        using var stream = File.OpenRead(ProjectFiles.Reference($"stations/tsv/{id}.txt"));
        var station = StationFile.Read(stream, new(id)).Station!;

        Assert.Equal(id, station.StationId);
        var days = Period.DaysBetween(station.Readings[0].Date, station.Readings[^1].Date) + 1;
        Assert.Equal(absentDays, days - station.LinesRead);
        var maxima = Of(station, MaxTemperatureC);
        Assert.Equal(withoutMaximum, station.LinesRead - maxima.Count);
        Assert.Equal(upsideDown, Of(station, MinTemperatureC).Count(
            day => maxima.TryGetValue(day.Key, out var max) && day.Value > max));
    }

    [Fact]
    public void Read_GivesHandReadValues() =>
        Assert.Equal(
            [
                new(new(1985, 1, 1), MinTemperatureC, -5, null),
                new(new(1985, 1, 1), MaxTemperatureC, 4.4, null),
                new(new(1985, 1, 1), PrecipitationMm, 29.5, null),
                new(new(1985, 1, 2), PrecipitationMm, 0.8, null),
            ],
            // The first line of USC00111280, and one whose temperatures are missing.
            Read("19850101\t   44\t  -50\t  295", "19850102\t-9999\t-9999\t    8").Station!.Readings);

    [Theory]
    [InlineData("19850230\t   44\t  -50\t  295", "date", "19850230")]
    [InlineData("19850102\t   44\t  -50", "line", "19850102\t   44\t  -50")]
    [InlineData("19850102\t   44\t  -50\t  295\t", "line", "19850102\t   44\t  -50\t  295\t")]
    [InlineData("19850102\t   4x\t  -50\t  295", "TMAX", "4x")]
    [InlineData("19850102\t  744\t  -50\t  295", "TMAX", "744")]
    [InlineData("19850101\t   44\t-9999\t-9999", "TMIN", "1985-01-01")]
    public void Read_NamesWhatIsWrong(string line, string field, string value)
    {
        var faults = Read("19850101\t   44\t  -50\t  295", line).Faults.Faults;
        Assert.Contains((2, field, value), faults.Select(fault => (fault.Line!.Value, fault.Field, fault.Value)));
    }

    [Fact]
    public void Read_AsksWhoseFileItIs() =>
        Assert.Equal(
            "line 1: station 'not said': say which station the file is of; it does not",
            StationText.Read("19850101\t   44\t  -50\t  295").Faults.ToString());

    [Fact]
    public void Read_TakesOneStation_OutOfAFileByYear()
    {
        string[] lines =
        [
            "AE000041196,19990101,TMAX,278,,,I,", "USC00368449,19990101,TMIN,-144,,,0,0700",
            "USW00014922,19990101,TMIN,-200,,,0,2400", "USC00368449,19990102,TMIN,-100,,,0,0700",
        ];

        var station = StationText.Read(new StationFileHints("USC00368449"), lines).Station!;

        Assert.Equal(("USC00368449", 4, 2), (station.StationId, station.LinesRead, station.LinesUsed));
        Assert.Equal([-14.4, -10], station.Readings.Select(reading => reading.Value));
        Assert.False(StationText.Read(lines).IsAccepted);
    }

    private static StationImport Read(params string[] lines) =>
        StationText.Read(new StationFileHints("USC00111280"), lines);

    private static Dictionary<LocalDate, double> Of(StationRecord station, DailyElement element) => station.Readings
        .Where(reading => reading.Element == element).ToDictionary(reading => reading.Date, reading => reading.Value);
}
