using Shouldly;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Quality;
using WorkWindows.Service.Records;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tests.Records;

public sealed class RejectedRowsTests
{
    [Fact]
    public void Of_ShowsTheLatestTwenty_AndCountsTheRest()
    {
        var rows = RejectedRows.Of([("Mill", Findings(1, 15)), ("Weir", Findings(8, 15))]);

        rows.Rows.Count.ShouldBe(20);
        rows.More.ShouldBe(10);
        rows.Rows[0].ShouldBe(
            new(new(2026, 1, 22), "Weir", "minimum temperature 100 °F", "beyond any reading on record"));
        rows.Rows[^1].ShouldBe(
            new(new(2026, 1, 9), "Mill", "minimum temperature 100 °F", "beyond any reading on record"), "");
    }

    [Fact]
    public void Of_IsEmpty_WhenEveryReadingIsUsed() => RejectedRows.Of([("Mill", Findings(1, 0))]).Rows.ShouldBeEmpty();

    private static StationFindings.FindingsView Findings(int firstDay, int count) => new(
        "USC00990001", [], 100, count,
        [
            .. Enumerable.Range(firstDay, count).Select(day => new StationFindings.RejectedView(
                new(2026, 1, day), DailyElement.MinTemperatureC, 37.8, RejectionReason.Impossible,
                RejectedReading.WordsOf(RejectionReason.Impossible))),
        ],
        [], []);
}
