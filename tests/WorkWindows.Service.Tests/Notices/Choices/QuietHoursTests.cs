using CsCheck;
using NodaTime;
using NodaTime.Text;
using Shouldly;
using WorkWindows.Service.Notices.Choices;

namespace WorkWindows.Service.Tests.Notices.Choices;

/// <summary>In Detroit clocks were put forward on 8 March 2026 at 02:00 and back on 1 November 2026 at 02:00 (tz database).</summary>
public sealed class QuietHoursTests
{
    private static readonly DateTimeZone Detroit = DateTimeZoneProviders.Tzdb["America/Detroit"];

    [Theory]
    [InlineData("21:00", "07:00", "2026-02-02T20:59:59", "2026-02-02T20:59:59-05")]
    [InlineData("21:00", "07:00", "2026-02-02T21:00:00", "2026-02-03T07:00:00-05")]
    [InlineData("21:00", "07:00", "2026-02-03T06:59:59", "2026-02-03T07:00:00-05")]
    [InlineData("21:00", "07:00", "2026-02-03T07:00:00", "2026-02-03T07:00:00-05")]
    [InlineData("12:00", "13:30", "2026-02-03T12:15:00", "2026-02-03T13:30:00-05")]
    [InlineData("12:00", "13:30", "2026-02-03T13:30:00", "2026-02-03T13:30:00-05")]
    [InlineData("21:00", "07:00", "2026-03-07T23:00:00", "2026-03-08T07:00:00-04")]  // the night is an hour shorter
    [InlineData("21:00", "02:30", "2026-03-07T23:00:00", "2026-03-08T03:00:00-04")]  // 02:30 does not exist
    [InlineData("21:00", "01:30", "2026-10-31T23:00:00", "2026-11-01T01:30:00-05")]  // the second 01:30
    public void Over_GivesTheEndOfTheQuiet(string from, string until, string moment, string over)
    {
        var quiet = new QuietHours(LocalTimePattern.ExtendedIso.Parse($"{from}:00").Value,
            LocalTimePattern.ExtendedIso.Parse($"{until}:00").Value);
        var at = Detroit.AtStrictly(LocalDateTimePattern.GeneralIso.Parse(moment).Value).ToInstant();

        quiet.Over(at, Detroit).ShouldBe(OffsetDateTimePattern.GeneralIso.Parse(over).Value.ToInstant());
    }

    [Fact]
    public void Over_NeverGivesAMomentOfQuiet_NorWaitsLongerThanADay() =>
        Gen.Select(Gen.Int[0, 1439], Gen.Int[0, 1439], Gen.Int[0, 366 * 1440]).Where(one => one.Item1 != one.Item2)
            .Sample((from, until, minutes) =>
            {
                var quiet = new QuietHours(LocalTime.FromMinutesSinceMidnight(from), LocalTime.FromMinutesSinceMidnight(until));
                var moment = Instant.FromUtc(2026, 1, 1, 0, 0) + Duration.FromMinutes(minutes);
                var over = quiet.Over(moment, Detroit);

                quiet.Over(over, Detroit).ShouldBe(over);
                (over - moment).ShouldBeInRange(Duration.Zero, Duration.FromHours(25));
            });
}
