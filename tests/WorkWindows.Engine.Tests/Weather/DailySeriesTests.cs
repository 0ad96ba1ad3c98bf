using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Weather;

public sealed class DailySeriesTests
{
    private static readonly LocalDate Day = new(2026, 2, 27);

    [Fact]
    public void Of_LaysReadingsOutByDay_WhateverTheirOrder()
    {
        var series = DailySeries.Of([Min(3, -2), Min(0, -4), Min(1, -3)]);
        var column = series[DailyElement.MinTemperatureC]!;

        Assert.Equal((Day, new LocalDate(2026, 3, 2)), (column.First, column.Last));
        Assert.Equal([-4, -3, double.NaN, -2], column.Values);
        Assert.Equal(double.NaN, column[Day.PlusDays(-1)]);
        Assert.Equal(-2, column[Day.PlusDays(3)]);
        Assert.Null(series[DailyElement.GustMps]);
    }

    [Fact]
    public void Of_NeverUsesAFlaggedValue()
    {
        DailyReading[] readings = [Min(0, -4), Min(1, -30) with { QualityFlag = 'I' }];
        var column = DailySeries.Of(readings)[DailyElement.MinTemperatureC]!;

        Assert.Equal([-4, double.NaN], column.Values);
        Assert.Equal(1, column.RejectedCount);
    }

    [Fact]
    public void Of_RejectsBothValues_WhenTheMinimumIsAboveTheMaximum()
    {
        var series = DailySeries.Of([Min(0, -4), Min(1, 6), Min(2, 5), Max(1, 5), Max(2, 5), Max(3, 9)]);

        Assert.Equal([-4, double.NaN, 5], series[DailyElement.MinTemperatureC]!.Values);
        Assert.Equal([double.NaN, 5, 9], series[DailyElement.MaxTemperatureC]!.Values);
        Assert.Equal(1, series[DailyElement.MaxTemperatureC]!.RejectedCount);
    }

    [Fact]
    public void Of_NamesEveryDuplicateAndEveryValueThatIsNone()
    {
        var error = Assert.Throws<ArgumentException>(() => DailySeries.Of(
            [Min(0, 1), Min(0, 1), Max(1, 8), Max(1, 9) with { QualityFlag = 'D' }, Max(2, double.NaN)]));

        Assert.Contains("MinTemperatureC on 2026-02-27", error.Message, StringComparison.Ordinal);
        Assert.Contains("MaxTemperatureC on 2026-02-28", error.Message, StringComparison.Ordinal);
        Assert.Contains("MaxTemperatureC on 2026-03-01", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_SaysHowManyMoreDuplicatesThereAre()
    {
        var twice = Enumerable.Range(0, 25).SelectMany(day => new[] { Min(day, 1), Min(day, 1) });

        var error = Assert.Throws<ArgumentException>(() => DailySeries.Of(twice));

        Assert.Contains("and 15 more", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void WithElements_TakesWindOfAnotherStation()
    {
        var woods = DailySeries.Of([Min(0, -4), Wind(0, 2)], readsUsUnits: true);
        var airport = DailySeries.Of([Min(0, -1), Wind(0, 9)]);
        var merged = woods.WithElements(airport, DailyElement.WindMps, DailyElement.GustMps);

        Assert.Equal(-4, merged[DailyElement.MinTemperatureC]![Day]);
        Assert.True(merged[DailyElement.MinTemperatureC]!.ReadsUsUnits);
        Assert.Equal(9, merged[DailyElement.WindMps]![Day]);
        Assert.Null(merged[DailyElement.GustMps]);
    }

    [Theory]
    [InlineData("2026-02-25", "NaN NaN -4 -3 NaN")]
    [InlineData("2026-02-28", "-3 NaN NaN NaN NaN")]
    [InlineData("2020-01-01", "NaN NaN NaN NaN NaN")]
    [InlineData("2030-01-01", "NaN NaN NaN NaN NaN")]
    public void CopyTo_LeavesDaysWithoutAValueEmpty(string first, string values)
    {
        var column = DailySeries.Of([Min(0, -4), Min(1, -3)])[DailyElement.MinTemperatureC]!;
        var target = new double[5];
        column.CopyTo(new(NodaTime.Text.LocalDatePattern.Iso.Parse(first).Value, 5), target);

        Assert.Equal(values, string.Join(' ', target));
    }

    [Fact]
    public void CopyTo_RefusesATargetThatIsTooShort()
    {
        var column = DailySeries.Of([Min(0, -4)])[DailyElement.MinTemperatureC]!;

        Assert.Throws<ArgumentException>(() => column.CopyTo(new DaySpan(Day, 2), new double[1]));
    }

    private static DailyReading Min(int day, double valueC) =>
        new(Day.PlusDays(day), DailyElement.MinTemperatureC, valueC, null);

    private static DailyReading Max(int day, double valueC) =>
        new(Day.PlusDays(day), DailyElement.MaxTemperatureC, valueC, null);

    private static DailyReading Wind(int day, double valueMps) =>
        new(Day.PlusDays(day), DailyElement.WindMps, valueMps, null);
}
