using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Quality;
using static WorkWindows.Engine.Tests.Weather.Quality.Faults;

namespace WorkWindows.Engine.Tests.Weather.Quality;

/// <summary>How many of the faults that are put into the good record of an airport are found.</summary>
public sealed class InjectedFaultsTests
{
    private static readonly List<DailyReading> Record = ReferenceStations.Of(ReferenceStations.OHare);

    [Theory]
    [InlineData(15, 0.15)]
    [InlineData(20, 0.65)]
    [InlineData(25, 0.9)]
    [InlineData(30, 0.98)]
    [InlineData(-15, 0.15)]
    [InlineData(-20, 0.65)]
    [InlineData(-25, 0.9)]
    [InlineData(-30, 0.98)]
    public void Check_FindsSingleWildValues(double offC, double atLeast) => Assert.InRange(
        HitRate(Record, reading => IsPicked(reading.Date) ? reading with { Value = reading.Value + offC } : reading),
        atLeast, 1);

    [Fact]
    public void Check_FindsADayOfFahrenheitTakenForCelsius() => Assert.InRange(
        HitRate(Record, reading => IsPicked(reading.Date) ? reading with { Value = reading.Value * 1.8 + 32 } : reading),
        0.95, 1);

    [Theory]
    [InlineData(1, 0.9)]
    [InlineData(4, 0.9)]
    [InlineData(7, 0.9)]
    [InlineData(10, 0.9)]
    public void Check_FindsAMonthOfFahrenheitTakenForCelsius(int month, double atLeast) => Assert.InRange(
        HitRate(Record, reading => IsMonth(reading.Date, 2007, month)
            ? reading with { Value = reading.Value * 1.8 + 32 }
            : reading),
        atLeast, 1);

    [Fact]
    public void Check_FindsEverySwapOfMinimumAndMaximum() => Assert.Equal(
        1,
        HitRate(Record, reading => !IsPicked(reading.Date) ? reading
            : reading.Element == DailyElement.MinTemperatureC ? reading with { Element = DailyElement.MaxTemperatureC }
            : reading with { Element = DailyElement.MinTemperatureC }));

    [Theory]
    [InlineData(14, 0)]
    [InlineData(15, 1)]
    [InlineData(20, 1)]
    public void Check_FindsAMinimumThatStandsStill_FromFifteenDaysOn(int days, double share) => Assert.Equal(
        share,
        HitRate(Record, reading => reading.Element == DailyElement.MinTemperatureC
            && reading.Date.Year == 2008 && reading.Date.DayOfYear is var day && day > 150 && day <= 150 + days
                ? reading with { Value = 12.34 }
                : reading));

    [Fact]
    public void Check_FindsACopiedYear_AndRejectsItsModelToo()
    {
        var model = Record.Where(reading => reading.Date.Year == 2005)
            .ToDictionary(reading => (reading.Element, reading.Date.Month, reading.Date.Day), reading => reading.Value);
        var copied = Record.Select(reading => reading.Date.Year == 2009
            && model.TryGetValue((reading.Element, reading.Date.Month, reading.Date.Day), out var value)
                ? reading with { Value = value }
                : reading).ToList();

        var repeated = QualityControl.Check(copied, readsUsUnits: true).Rejected
            .Where(reading => reading.Reason == RejectionReason.RepeatedMonth).ToList();

        Assert.Equal([2005, 2009], repeated.Select(reading => reading.Date.Year).Distinct().Order());
        Assert.Equal(2 * 2 * 365, repeated.Count);
    }
}
