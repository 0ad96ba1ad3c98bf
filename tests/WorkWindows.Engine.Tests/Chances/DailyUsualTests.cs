using CsCheck;
using NodaTime;
using WorkWindows.Engine.Chances;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Chances;

public class DailyUsualTests
{
    private const int Years = 30;

    [Fact]
    public void MeanC_IsThatOfTheDaysAroundInAllYears()
    {
        // 1 °C warmer every year, and the same all year round.
        var usual = DailyUsual.Of(Column(date => date.Year - 1990));

        Assert.Equal(14.5, usual.MeanC(new(2026, 7, 15)), 1e-9);
        Assert.Equal(14.5, usual.MeanC(new(2024, 2, 29)), 0.1);
    }

    [Fact]
    public void MeanC_DoesNotJumpAtTheTurnOfTheYear()
    {
        var usual = DailyUsual.Of(Column(date => -10 * Math.Cos(2 * Math.PI * date.DayOfYear / 365.25)));

        Assert.Equal(usual.MeanC(new(2025, 12, 31)), usual.MeanC(new(2026, 1, 1)), 0.1);
    }

    // A first-order autoregressive series, whose correlation from day to day is known by construction.
    [Fact]
    public void KeptPerDay_IsTheCorrelationThatASeriesWasMadeWith() =>
        Gen.Select(Gen.Double[0.1, 0.9], Gen.Int[0, 10_000]).Sample(
            (kept, seed) =>
            {
                var random = new Random(seed);
                var departure = 0.0;
                var usual = DailyUsual.Of(Column(_ =>
                    departure = kept * departure + Math.Sqrt(1 - kept * kept) * Normal(random)));
                return Math.Abs(usual.KeptPerDay(new(2026, 2, 1)) - kept) < 0.1;
            },
            iter: 30);

    [Fact]
    public void KeptPerDay_IsNothing_WhenTheTemperatureNeverVaries() =>
        Assert.Equal(0, DailyUsual.Of(Column(_ => 5)).KeptPerDay(new(2026, 2, 1)));

    private static DailyColumn Column(Func<LocalDate, double> valueC)
    {
        var first = new LocalDate(1990, 1, 1);
        return new(
            first, [.. Enumerable.Range(0, Years * 365).Select(day => valueC(first.PlusDays(day)))], 0, ReadsUsUnits: false);
    }

    // Box and Muller.
    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
