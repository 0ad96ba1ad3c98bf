using CsCheck;
using WorkWindows.Engine.Phenology;
using static WorkWindows.Engine.Phenology.DegreeDayMethod;

namespace WorkWindows.Engine.Tests.Phenology;

public sealed class DegreeDaysTests
{
    private static readonly Gen<(double Min, double Max, double NextMin)> Days =
        Gen.Select(Gen.Double[-30, 110], Gen.Double[0, 50], Gen.Double[-30, 110], (min, range, nextMin) =>
            (min, min + range, nextMin));

    private static readonly Gen<(double Lower, double Upper)> Limits =
        Gen.Select(Gen.Double[0, 60], Gen.Double[0, 50], (lower, width) => (lower, lower + width));

    [Theory]
    // Zalom et al. 1983 (University of California Leaflet 21373), table 7: base 55 °F, upper limit 90 °F (S).
    [InlineData(96, 110, 91, 35, 35, 35, 35)]
    [InlineData(91, 105, 96, 35, 35, 35, 35)]
    [InlineData(45, 54, 38, 0, 0, 0, 0)]
    [InlineData(38, 50, 45, 0, 0, 0, 0)]
    [InlineData(60, 80, 75, 15, 18.75, 15, 18.75)]
    [InlineData(75, 88, 60, 26.5, 22.75, 26.5, 22.75)]
    [InlineData(50, 82, 45, 11.39, 10.62, 11.85, 11.31)]
    [InlineData(45, 70, 50, 4.50, 5.06, 5.31, 5.70)]
    // Printed 24.88 for the double triangle, which the table's own formula does not give: a misprint (C).
    [InlineData(60, 100, 75, 23.75, 27.125, 22.82, 26.26)]
    [InlineData(75, 95, 60, 29.38, 25.76, 28.91, 25.30)]
    [InlineData(50, 101, 48, 19.56, 19.19, 18.95, 18.69)]
    [InlineData(48, 95, 50, 16.76, 17.13, 16.96, 17.23)]
    public void Of_MatchesPublishedTable_OfTrianglesAndSines(
        double minF, double maxF, double nextMinF, double singleTriangle, double doubleTriangle, double singleSine,
        double doubleSine) => AssertEach(
        (minF, maxF, nextMinF), 55, 90, 0.0051, (SingleTriangle, singleTriangle), (DoubleTriangle, doubleTriangle),
        (SingleSine, singleSine), (DoubleSine, doubleSine));

    [Theory]
    // McMaster and Wilhelm 1997, table 1, methods 1 and 2, base 0 °C (S).
    [InlineData(20, 10, 15, 15)]
    [InlineData(10, 1, 5.5, 5.5)]
    [InlineData(8, -2, 3, 4)]
    [InlineData(6, 0, 3, 3)]
    [InlineData(10, 5, 7.5, 7.5)]
    [InlineData(5, -5, 0, 2.5)]
    [InlineData(-2, -7, 0, 0)]
    [InlineData(-5, -10, 0, 0)]
    [InlineData(10, -2, 4, 5)]
    [InlineData(15, 2, 8.5, 8.5)]
    public void Of_MatchesPublishedTable_OfAverages(double maxC, double minC, double method1, double method2) =>
        AssertEach(
            (minC, maxC, double.NaN), 0, double.PositiveInfinity, 1e-9, (SimpleAverage, method1),
            (ClippedAverage, method2));

    [Theory]
    [InlineData(82, 61, 21.5)] // Democrat & Chronicle, 30 May 2013 (S)
    [InlineData(65, 40, 2.5)] // Michigan State University Extension, "Calculating growing degree days" (S)
    [InlineData(60, 35, 0)] // the same (S)
    public void SimpleAverage_MatchesWorkedExamples_InBase50F(double maxF, double minF, double degreeDaysF) =>
        Assert.Equal(degreeDaysF, DegreeDays.SimpleAverage(minF, maxF, 50), 1e-9);

    [Theory]
    // Computed from the published formulas, °F, without an upper limit (C).
    [InlineData(50, 35, 60, 40, 0, 5, 2.000, 2.250, 2.809, 2.996)]
    [InlineData(50, 30, 55, 28, 0, 2.5, 0.500, 0.481, 0.969, 0.950)]
    [InlineData(41, 28, 52, 31, 0, 5.5, 2.521, 2.701, 3.333, 3.465)]
    [InlineData(41, 33, 47, 30, 0, 3, 1.286, 1.172, 1.751, 1.662)]
    [InlineData(41, 38, 60, 44, 8, 9.5, 8.205, 9.602, 8.477, 9.738)]
    public void Of_MatchesComputedCases(
        double lowerF, double minF, double maxF, double nextMinF, double method1, double method2,
        double singleTriangle, double doubleTriangle, double singleSine, double doubleSine) => AssertEach(
        (minF, maxF, nextMinF), lowerF, double.PositiveInfinity, 0.00051, (SimpleAverage, method1),
        (ClippedAverage, method2), (SingleTriangle, singleTriangle), (DoubleTriangle, doubleTriangle),
        (SingleSine, singleSine), (DoubleSine, doubleSine));

    [Theory]
    // As maize is reckoned, 50 to 86 °F (C).
    [InlineData(60, 95, 65, 27.5, 23, 25.509, 26.673)]
    [InlineData(40, 92, 48, 16, 18, 17.024, 18.126)]
    public void Of_MatchesComputedCases_OfMaize(
        double minF, double maxF, double nextMinF, double method1, double method2, double singleSine,
        double doubleSine) => AssertEach(
        (minF, maxF, nextMinF), 50, 86, 0.00051, (SimpleAverage, method1), (ClippedAverage, method2),
        (SingleSine, singleSine), (DoubleSine, doubleSine));

    [Fact]
    public void Of_LiesBetweenNothingAndTheWholeRange() => ForEachDay((method, day, limits) =>
    {
        var heat = Heat(method, day, limits);
        return heat >= -1e-9 && heat <= limits.Upper - limits.Lower + 1e-9;
    });

    [Fact]
    public void Of_IsNeverLess_WhenTheMaximumIsHigher() => ForEachDay((method, day, limits) =>
        Heat(method, day with { Max = day.Max + 3 }, limits) >= Heat(method, day, limits) - 1e-9);

    [Fact]
    public void Of_IsTheMeanOfTwoSingles_WhenDouble() => Gen.Select(Days, Limits).Sample((day, limits) =>
    {
        var next = day with { Min = Math.Min(day.NextMin, day.Max) };
        day = day with { NextMin = next.Min };
        return Near(DoubleSine, SingleSine, day, next, limits)
            && Near(DoubleTriangle, SingleTriangle, day, next, limits);
    });

    [Theory]
    [InlineData(SimpleAverage)]
    [InlineData(ClippedAverage)]
    [InlineData(SingleTriangle)]
    [InlineData(DoubleTriangle)]
    [InlineData(SingleSine)]
    [InlineData(DoubleSine)]
    public void Of_HasNoValue_WhenATemperatureItNeedsIsMissing(DegreeDayMethod method)
    {
        Assert.Equal(double.NaN, DegreeDays.Of(method, double.NaN, -20, 2, 4));
        Assert.Equal(double.NaN, DegreeDays.Of(method, 10, double.NaN, 2, 4));
        Assert.Equal(
            method is DoubleSine or DoubleTriangle, double.IsNaN(DegreeDays.Of(method, 10, 20, double.NaN, 4)));
    }

    [Fact]
    public void Of_TakesANextMinimumAboveTheMaximum_AsANightThatGrewWarmer() =>
        Assert.Equal((5 + 12.5) / 2, DegreeDays.Of(DoubleSine, 0, 10, 15, 0), 1e-9);

    [Fact]
    public void Of_RefusesWhatIsUpsideDown()
    {
        Assert.Throws<ArgumentException>(() => DegreeDays.SimpleAverage(12, 10, 4));
        Assert.Throws<ArgumentException>(() => DegreeDays.Of(SingleSine, 10, 12, 10, 30, 20));
    }

    private static void ForEachDay(
        Func<DegreeDayMethod, (double Min, double Max, double NextMin), (double Lower, double Upper), bool> law) =>
        Gen.Select(Gen.Enum<DegreeDayMethod>(), Days, Limits).Sample((method, day, limits) =>
            law(method, day, limits));

    private static double Heat(
        DegreeDayMethod method, (double Min, double Max, double NextMin) day, (double Lower, double Upper) limits) =>
        DegreeDays.Of(method, day.Min, day.Max, day.NextMin, limits.Lower, limits.Upper);

    private static bool Near(
        DegreeDayMethod twice, DegreeDayMethod once, (double Min, double Max, double NextMin) day,
        (double Min, double Max, double NextMin) next, (double Lower, double Upper) limits) =>
        Math.Abs(Heat(twice, day, limits) - (Heat(once, day, limits) + Heat(once, next, limits)) / 2) < 1e-9;

    private static void AssertEach(
        (double Min, double Max, double NextMin) day, double lower, double upper, double tolerance,
        params ReadOnlySpan<(DegreeDayMethod Method, double DegreeDays)> expected)
    {
        foreach (var (method, degreeDays) in expected)
            Assert.Equal(degreeDays, Heat(method, day, (lower, upper)), tolerance);
    }
}
