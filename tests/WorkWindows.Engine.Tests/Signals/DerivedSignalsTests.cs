using NodaTime;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Signals;

/// <summary>The published formulas as signals: units converted, and nothing made of missing inputs.</summary>
public class DerivedSignalsTests
{
    private static readonly LocalDate December = new(2025, 12, 1);

    // NWS Tulsa chart: 96 °F and 50 % feel like 108 °F (regression 107.637, C).
    [Theory]
    [InlineData(96, 50.0, 107.637)]
    [InlineData(96, null, null)]
    public void HeatIndex_IsThatOfTheMaximumInTheLowestHumidity(double maxF, double? humidity, double? indexF) =>
        AssertF(indexF, Of(SignalKind.HeatIndexC, [(DailyElement.MaxTemperatureC, DegC(maxF)), (DailyElement.MinHumidityPercent, humidity)]));

    // NWS 2001 chart: 20 °F in 15 mph feels like 6 °F (6.219, C).
    [Theory]
    [InlineData(20, 15.0, 6.219)]
    [InlineData(20, null, null)]
    [InlineData(20, 0.0, 20.0)]
    public void WindChill_IsThatOfTheMinimumInTheStrongestWind(double minF, double? windMph, double? chillF) =>
        AssertF(chillF, Of(SignalKind.WindChillC, [(DailyElement.MinTemperatureC, DegC(minF)), (DailyElement.WindMps, windMph * 0.44704)]));

    // G3: bare ground at -10 °C is frozen (83 °C-days) on the tenth day, at 87.525.
    [Fact]
    public void FrozenGround_CountsFromJuly_ThroughDaysBeforeTheSpan()
    {
        var index = FrozenGround(Winter(-10, snowCm: 0, coldDays: 20))[SignalKind.FrozenGroundIndexC]!;

        Assert.Equal(87.525, index.Values[9], 0.001);
        Assert.Equal(Basis.Observed, index.Bases[9]);
    }

    [Fact]
    public void FrozenGround_BridgesAGapOfThreeDays_AndNotOfFour()
    {
        Assert.Equal(
            87.525, FrozenGround(Winter(-10, 0, 20, gapDays: 3))[SignalKind.FrozenGroundIndexC]!.Values[9], 0.001);
        Assert.Equal(
            double.NaN, FrozenGround(Winter(-10, 0, 20, gapDays: 4))[SignalKind.FrozenGroundIndexC]!.Values[9]);
    }

    [Fact]
    public void FrozenGround_IsUnknown_WithoutSnowDepths()
    {
        var signals = FrozenGround(
            [.. Winter(-10, 0, 20).Where(reading => reading.Element != DailyElement.SnowDepthCm)]);

        Assert.Equal((double.NaN, double.NaN),
            (signals[SignalKind.FrozenGroundIndexC]!.Values[9], signals[SignalKind.FrostDepthCm]!.Values[9]));
    }

    // 0.707 of Stefan's sqrt(2 · 86400 · 1.0 · 87.525 / 1.002e8) m.
    [Fact]
    public void FrostDepth_IsTheLowBoundOfStefans() => Assert.Equal(
        100 * 0.707 * Math.Sqrt(2 * 86400 * 87.525 / 1.002e8),
        FrozenGround(Winter(-10, 0, 20))[SignalKind.FrostDepthCm]!.Values[9], 0.01);

    // The index of the third day is 29.109 (G3); of the ninth 77.9, still below 83.
    [Theory]
    [InlineData(2)]
    [InlineData(8)]
    public void FrostDepth_IsNone_UntilTheIndexCallsTheGroundFrozen(int day) =>
        Assert.Equal(0, FrozenGround(Winter(-10, 0, 20))[SignalKind.FrostDepthCm]!.Values[day]);

    private static SignalSet FrozenGround(IReadOnlyList<DailyReading> readings) =>
        Build(new DaySpan(December, 20), readings);

    /// <summary>
    /// Mild days from July on, whose snow nobody measures, then cold ones, in the midst of which some are missing.
    /// </summary>
    private static List<DailyReading> Winter(double coldC, double snowCm, int coldDays, int gapDays = 0)
    {
        var readings = new List<DailyReading>();
        for (var date = new LocalDate(2025, 7, 1); date < December.PlusDays(coldDays); date = date.PlusDays(1))
        {
            var isCold = date >= December;
            if (date >= December.PlusDays(2) && date < December.PlusDays(2 + gapDays))
                continue;
            readings.Add(new(date, DailyElement.MinTemperatureC, isCold ? coldC : 5, null));
            readings.Add(new(date, DailyElement.MaxTemperatureC, isCold ? coldC : 5, null));
            if (isCold)
                readings.Add(new(date, DailyElement.SnowDepthCm, snowCm, null));
        }
        return readings;
    }

    private static double? Of(SignalKind kind, (DailyElement Element, double? Value)[] values)
    {
        var readings = values.Where(value => value.Value is not null)
            .Select(value => new DailyReading(December, value.Element, value.Value!.Value, null));
        var signal = Build(new(December, 1), readings)[kind]!;
        return signal.Bases[0] == Basis.Missing ? null : signal.Values[0];
    }

    private static SignalSet Build(DaySpan span, IEnumerable<DailyReading> readings) => SignalSetBuilder.Build(
        new("lansing", 42.73, -84.56), span, DailySeries.Of(readings), null, DateTimeZoneProviders.Tzdb["America/Detroit"],
        WorkShift.Default, AlertReport.None);

    private static double DegC(double degF) => (degF - 32) / 1.8;

    private static void AssertF(double? expectedF, double? actualC)
    {
        Assert.Equal(expectedF is null, actualC is null);
        if (expectedF is { } expected)
            Assert.Equal(expected, actualC!.Value * 1.8 + 32, 0.001);
    }
}
