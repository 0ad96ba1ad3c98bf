using CsCheck;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Tests.Daylight;

public sealed class ShiftLightTests
{
    private const double DuluthLatitude = 46.7867;
    private const double DuluthLongitude = -92.1005;
    private static readonly DateTimeZone Chicago = DateTimeZoneProviders.Tzdb["America/Chicago"];

    [Theory]
    // Reference D4, Duluth: sunrise 07:49:14 and sunset 16:46:35 on 15 January 2024, 05:14:09 and 21:06:11 on 20 June.
    [InlineData("2024-01-15", "08:00", "17:00", 527, 13)]
    [InlineData("2024-01-15", "07:00", "12:00", 251, 49)]
    [InlineData("2024-01-15", "17:00", "22:00", 0, 300)]
    [InlineData("2024-06-20", "08:00", "17:00", 540, 0)]
    [InlineData("2024-06-20", "04:00", "23:00", 952, 188)]
    // The nights in which the clocks change are an hour shorter and longer.
    [InlineData("2026-03-08", "00:00", "06:00", 0, 300)]
    [InlineData("2026-11-01", "00:00", "06:00", 0, 420)]
    [InlineData("2026-03-08", "08:00", "17:00", 540, 0)]
    [InlineData("2026-11-01", "08:00", "17:00", 532, 8)] // clocks are back: sunset 16:52:28 by the table beside
    public void Over_CountsMinutesThatPass(string date, string start, string end, double light, double dark)
    {
        var span = new DaySpan(LocalDatePattern.Iso.Parse(date).Value, 1);
        var shift = new WorkShift(Time(start), Time(end));
        var minutes = ShiftLight.Over(span, shift, Chicago, DuluthLatitude, DuluthLongitude);

        Assert.Equal((light, dark), (minutes.LightMinutes[0], minutes.DarkMinutes[0]));
    }

    [Theory]
    [InlineData("2026-06-21", 540, 0)] // the midnight sun
    [InlineData("2026-12-21", 0, 540)] // the polar night
    public void Over_KnowsDaysWithoutSunriseAndSunset(string date, double light, double dark)
    {
        var zone = DateTimeZoneProviders.Tzdb["America/Anchorage"];
        var span = new DaySpan(LocalDatePattern.Iso.Parse(date).Value, 1);
        var minutes = ShiftLight.Over(span, WorkShift.Default, zone, 71.29, -156.79);

        Assert.Equal((light, dark), (minutes.LightMinutes[0], minutes.DarkMinutes[0]));
    }

    [Fact]
    public void Over_LosesAndDoublesNoMinute_InAYearWithClockChanges()
    {
        // Two shifts that make up the day except its last minute, on every place and day of 2026.
        var wholeDay = new WorkShift(LocalTime.Midnight, new(23, 59));
        var span = new DaySpan(new(2026, 1, 1), 365);
        Gen.Select(Gen.Double[-65, 65], Gen.Double[-180, 180]).Sample((latitude, longitude) =>
        {
            var minutes = ShiftLight.Over(span, wholeDay, Chicago, latitude, longitude);
            for (var day = 0; day < span.Count; day++)
            {
                var hours = (span[day].Month, span[day].Day) switch { (3, 8) => 23, (11, 1) => 25, _ => 24 };
                var total = hours * 60 - 1;
                Assert.Equal(total, minutes.LightMinutes[day] + minutes.DarkMinutes[day]);
                Assert.InRange(minutes.LightMinutes[day], 0, total);
            }
        }, iter: 20);
    }

    // Where the clocks change at midnight itself, the day begins an hour late or has its first hour twice.
    [Theory]
    [InlineData("America/Havana")]
    [InlineData("Atlantic/Azores")]
    [InlineData("Australia/Lord_Howe")]
    [InlineData("America/Detroit")]
    public void Over_LosesAndDoublesNoMinute_WhereTheClocksChangeAtMidnight(string zoneId)
    {
        var zone = DateTimeZoneProviders.Tzdb[zoneId];
        var morning = new WorkShift(LocalTime.Midnight, new(12, 0));
        var evening = new WorkShift(new(12, 0), new(23, 59));
        var span = new DaySpan(new(2026, 1, 1), 365);

        var (first, second) = (ShiftLight.Over(span, morning, zone, 30, 30), ShiftLight.Over(
            span, evening, zone, 30, 30));

        for (var day = 0; day < span.Count; day++)
        {
            var length =
                zone.AtStartOfDay(span[day].PlusDays(1)).ToInstant() - zone.AtStartOfDay(span[day]).ToInstant();
            var counted = first.LightMinutes[day] + first.DarkMinutes[day]
                + second.LightMinutes[day] + second.DarkMinutes[day];
            Assert.Equal(length.TotalMinutes - 1, counted);
        }
    }

    [Fact]
    public void WorkShift_RefusesAShiftOverMidnight() =>
        Assert.Throws<ArgumentException>(() => new WorkShift(new(22, 0), new(6, 0)));

    private static LocalTime Time(string text) =>
        LocalTimePattern.CreateWithInvariantCulture("HH:mm").Parse(text).Value;
}
