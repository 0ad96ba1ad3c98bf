using System.Globalization;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Daylight;

namespace WorkWindows.Engine.Tests.Daylight;

public sealed class SunTimesTests
{
    private static readonly Duration AMinute = Duration.FromMinutes(1);

    [Theory]
    // Skyfield manual and tests (JPL DE421), with the times of these equations in the last column.
    [InlineData("2018-09-12", 40.8939, -83.8917, "rise", 90.833, "2018-09-12T11:13:12Z", "2018-09-12T11:13:14Z")]
    [InlineData("2018-09-12", 40.8939, -83.8917, "set", 90.833, "2018-09-12T23:49:38Z", "2018-09-12T23:49:40Z")]
    [InlineData("2018-09-13", 40.8939, -83.8917, "rise", 90.833, "2018-09-13T11:14:12Z", "2018-09-13T11:14:13Z")]
    [InlineData("2018-09-13", 40.8939, -83.8917, "set", 90.833, "2018-09-13T23:47:56Z", "2018-09-13T23:47:58Z")]
    [InlineData("2019-11-08", 41.281944, -84.362778, "rise", 108, "2019-11-08T10:42:00Z", "2019-11-08T10:42:25Z")]
    [InlineData("2019-11-08", 41.281944, -84.362778, "rise", 102, "2019-11-08T11:15:00Z", "2019-11-08T11:14:47Z")]
    [InlineData("2019-11-08", 41.281944, -84.362778, "rise", 96, "2019-11-08T11:48:00Z", "2019-11-08T11:47:46Z")]
    [InlineData("2019-11-08", 41.281944, -84.362778, "rise", 90.833, "2019-11-08T12:17:00Z", "2019-11-08T12:16:55Z")]
    [InlineData("2019-11-08", 41.281944, -84.362778, "set", 90.833, "2019-11-08T22:25:00Z", "2019-11-08T22:24:55Z")]
    [InlineData("2019-11-08", 41.281944, -84.362778, "set", 96, "2019-11-08T22:54:00Z", "2019-11-08T22:54:03Z")]
    [InlineData("2019-11-08", 41.281944, -84.362778, "set", 102, "2019-11-08T23:27:00Z", "2019-11-08T23:27:00Z")]
    [InlineData("2019-11-08", 41.281944, -84.362778, "set", 108, "2019-11-08T23:59:00Z", "2019-11-08T23:59:21Z")]
    public void RisingAndSetting_MatchPublishedTimes(
        string date, double latitude, double longitude, string way, double zenith, string published, string computed)
    {
        var (day, zone) = (LocalDatePattern.Iso.Parse(date).Value, Zone("America/New_York"));
        var found = way == "rise"
            ? SunTimes.Rising(day, zone, latitude, longitude, zenith)
            : SunTimes.Setting(day, zone, latitude, longitude, zenith);

        AssertNear(published, found, AMinute);
        AssertNear(computed, found, Duration.FromSeconds(2));
    }

    [Fact]
    public void On_SearchesInsideTheLocalDay()
    {
        // Reda and Andreas print 17:20:19, which is the evening of 16 October in Colorado and 17 October of UTC.
        var golden = SunTimes.On(new(2003, 10, 17), DateTimeZone.ForOffset(Offset.FromHours(-7)), 39.742476, -105.1786);

        AssertNear("2003-10-17T13:12:43Z", golden.Sunrise, Duration.FromSeconds(2));
        AssertNear("2003-10-18T00:18:51Z", golden.Sunset, Duration.FromSeconds(2));
        var before = SunTimes.On(new(2003, 10, 16), DateTimeZone.ForOffset(Offset.FromHours(-7)), 39.742476, -105.1786);
        AssertNear("2003-10-17T00:20:19Z", before.Sunset, Duration.FromSeconds(2));
    }

    [Theory]
    // Computed table of the reference (ground and daylight, D4), UTC; a time before 04:00 is on the next date of UTC.
    [InlineData(42.7325, -84.5555, "America/Detroit", "2024-01-15", "12:34:46 13:06:04 22:29:20 23:00:38", 563.3)]
    [InlineData(42.7325, -84.5555, "America/Detroit", "2024-03-20", "11:12:18 11:40:27 23:51:10 00:19:24", 730.7)]
    [InlineData(42.7325, -84.5555, "America/Detroit", "2024-06-20", "09:24:54 10:00:03 01:19:55 01:55:04", 919.9)]
    [InlineData(42.7325, -84.5555, "America/Detroit", "2024-11-15", "12:00:10 12:30:39 22:14:43 22:45:12", 584.1)]
    [InlineData(42.7325, -84.5555, "America/Detroit", "2024-12-21", "12:33:23 13:05:38 22:07:41 22:39:57", 542.0)]
    [InlineData(43.0731, -89.4012, "America/Chicago", "2024-01-15", "12:54:57 13:26:27 22:47:43 23:19:14", 561.3)]
    [InlineData(43.0731, -89.4012, "America/Chicago", "2024-12-21", "12:53:42 13:26:11 22:25:55 22:58:24", 539.7)]
    [InlineData(46.7867, -92.1005, "America/Chicago", "2024-01-15", "13:15:08 13:49:14 22:46:35 23:20:41", 537.4)]
    [InlineData(46.7867, -92.1005, "America/Chicago", "2024-06-20", "09:34:32 10:14:09 02:06:11 02:45:48", 952.0)]
    [InlineData(38.9517, -92.3341, "America/Chicago", "2024-03-20", "11:45:16 12:11:51 00:21:54 00:48:32", 730.0)]
    [InlineData(38.9517, -92.3341, "America/Chicago", "2024-12-21", "12:54:45 13:24:47 22:50:47 23:20:49", 566.0)]
    [InlineData(40.7934, -77.86, "America/New_York", "2024-01-15", "12:03:33 12:33:44 22:08:04 22:38:15", 574.3)]
    [InlineData(40.7934, -77.86, "America/New_York", "2024-12-21", "12:01:27 12:32:30 21:47:14 22:18:17", 554.7)]
    public void On_MatchesReferenceTable(
        double latitude, double longitude, string zone, string date, string times, double dayMinutes)
    {
        var day = LocalDatePattern.Iso.Parse(date).Value;
        var sun = SunTimes.On(day, Zone(zone), latitude, longitude);
        Instant?[] found = [sun.CivilDawn, sun.Sunrise, sun.Sunset, sun.CivilDusk];

        foreach (var (expected, actual) in times.Split(' ').Zip(found))
        {
            var next = string.CompareOrdinal(expected, "04:00:00") < 0 ? day.PlusDays(1) : day;
            AssertNear($"{next:R}T{expected}Z", actual, Duration.FromSeconds(2));
        }
        Assert.Equal(dayMinutes, (sun.Sunset - sun.Sunrise)!.Value.TotalMinutes, 0.06);
    }

    [Fact]
    public void On_AgreesWithAnIndependentLibrary_WithinAMinute()
    {
        var rows = File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Daylight", "sun-times-2026.csv"))
            .Where(line => !line.StartsWith('#')).Skip(1).Select(line => line.Split(',')).ToList();

        Assert.Equal(144, rows.Count);
        Assert.All(rows, row =>
        {
            var date = LocalDatePattern.Iso.Parse(row[4]).Value;
            var sun = SunTimes.On(date, Zone(row[1]), Degrees(row[2]), Degrees(row[3]));
            AssertNear(row[5], sun.CivilDawn, AMinute);
            AssertNear(row[6], sun.Sunrise, AMinute);
            AssertNear(row[7], sun.Sunset, AMinute);
            AssertNear(row[8], sun.CivilDusk, AMinute);
        });
    }

    [Theory]
    [InlineData("2026-06-21")] // the midnight sun
    [InlineData("2026-12-21")] // the polar night
    public void On_HasNoSunriseAndNoSunset_NearThePole(string date)
    {
        var sun = SunTimes.On(LocalDatePattern.Iso.Parse(date).Value, Zone("America/Anchorage"), 71.29, -156.79);

        Assert.Null(sun.Sunrise);
        Assert.Null(sun.Sunset);
    }

    private static DateTimeZone Zone(string id) => DateTimeZoneProviders.Tzdb[id];

    private static double Degrees(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static void AssertNear(string expected, Instant? actual, Duration tolerance)
    {
        var off = actual - InstantPattern.General.Parse(expected).Value;
        Assert.True(off is { } by && by <= tolerance && by >= -tolerance, $"{actual} is not {expected} ± {tolerance}.");
    }
}
