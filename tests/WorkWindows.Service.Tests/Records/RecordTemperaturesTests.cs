using CsCheck;
using NodaTime;
using Shouldly;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Records;

namespace WorkWindows.Service.Tests.Records;

public sealed class RecordTemperaturesTests
{
    private static readonly LocalDate First = new(2024, 1, 1);

    [Theory]
    [InlineData(731, "day", 731)]
    [InlineData(732, "week", 105)]
    [InlineData(5479, "week", 783)]
    [InlineData(5480, "month", 181)]
    public void Steps_GrowWithTheRange(int days, string step, int count)
    {
        var temperatures = RecordTemperatures.Of(DailySeries.Empty, new DaySpan(First, days));

        (temperatures.StepName, temperatures.Steps().Count).ShouldBe((step, count));
    }

    [Fact]
    public void Steps_KeepTheExtremes_AndAGapIsNoZero()
    {
        // A week without anything, then one with a cold and a hot day among gaps.
        var series = DailySeries.Of(
        [
            new(First.PlusDays(7), DailyElement.MinTemperatureC, -10, null),
            new(First.PlusDays(9), DailyElement.MinTemperatureC, -5, null),
            new(First.PlusDays(9), DailyElement.MaxTemperatureC, 15, null),
        ]);

        var steps = RecordTemperatures.Of(series, new DaySpan(First, 800)).Steps();

        steps[0].ShouldBe(new(First, null, null, Origin.None, 7));
        steps[1].ShouldBe(new(First.PlusDays(7), 14, 59, Origin.Own, 6));
    }

    [Fact]
    public void Steps_NeverLeaveOutAnExtreme() =>
        Gen.Select(Gen.Double[-40, 30].Array[1, 900], Gen.Int[0, 900]).Sample((minima, days) =>
        {
            var series = DailySeries.Of(minima.Select((minC, day) =>
                new DailyReading(First.PlusDays(day), DailyElement.MinTemperatureC, minC, null)));
            var temperatures = RecordTemperatures.Of(series, new DaySpan(First, minima.Length + days));
            var lowestF = Math.Round(minima.Min() * 1.8 + 32, 1);

            temperatures.Steps().Min(step => step.LowestMinF)!.Value.ShouldBe(lowestF, 0.051);
            temperatures.Rows().Min(row => row.LowestMinF)!.Value.ShouldBe(lowestF, 0.051);
            temperatures.Steps().Sum(step => step.DaysWithout).ShouldBe(minima.Length + days);
        });

    [Fact]
    public void Steps_TellWhatWasWorkedOut()
    {
        var minima = Column(DailyColumn.OwnValue, DailyColumn.Blended | 3, DailyColumn.Blended | 2, 2);

        var temperatures = RecordTemperatures.Of(minima, null, new DaySpan(First, 5));

        temperatures.Steps().Select(step => step.Origin)
            .ShouldBe([Origin.Own, Origin.Blended, Origin.Filled, Origin.Filled, Origin.None]);
        var stretches = RecordCharts.Of(temperatures, []).Stretches;
        stretches.Select(stretch => (stretch.To - stretch.From + 1, stretch.IsStrong)).ShouldBe(
            [(1, false), (2, true)]);
    }

    [Theory]
    [InlineData(null, "2026-02-03", "2025-09-01", "2026-02-02")]
    [InlineData("season", "2025-10-15", "2024-09-01", "2025-10-14")] // the new one is too short to show much
    [InlineData("season", "2025-11-01", "2025-09-01", "2025-10-31")]
    [InlineData("1y", "2026-02-03", "2025-02-03", "2026-02-02")]
    [InlineData("5y", "2026-02-03", "2021-02-03", "2026-02-02")]
    [InlineData("all", "2026-02-03", "1938-04-09", "2026-02-02")]
    public void Range_IsTheDaysUpToYesterday(string? key, string today, string first, string last)
    {
        var days = RecordRange.Find(key)!.Days(new(1938, 4, 9), NodaTime.Text.LocalDatePattern.Iso.Parse(today).Value);

        $"{days.First:R} {days.Last:R}".ShouldBe($"{first} {last}");
    }

    [Fact]
    public void Range_IsNone_ForAnotherKey() => RecordRange.Find("decade").ShouldBeNull();

    /// <summary>A column whose days come from the given stations.</summary>
    private static DailyColumn Column(params int[] contributors)
    {
        var values = contributors.Select((_, day) =>
            new DailyReading(First.PlusDays(day), DailyElement.MinTemperatureC, 1, null)).ToList();
        return DailySeries.Of(values)[DailyElement.MinTemperatureC]! with
        {
            Contributors = [.. contributors.Select(bits => (byte)bits)],
        };
    }
}
