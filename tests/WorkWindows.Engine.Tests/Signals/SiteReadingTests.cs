using NodaTime;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Signals;

public sealed class SiteReadingTests
{
    private static readonly LocalDate NewYear = new(2026, 1, 1);

    [Fact]
    public void With_PutsTheReadingInThePlaceOfTheSignal_OnItsDaysAlone()
    {
        var signals = Build().With(
            [new SiteReading(SignalKind.FrostDepthCm, 20, NewYear.PlusDays(1), NewYear.PlusDays(2))]);
        var depth = signals[SignalKind.FrostDepthCm]!;

        Assert.Equal([double.NaN, 20, 20, double.NaN], depth.Values);
        Assert.Equal([Basis.Missing, Basis.SiteObservation, Basis.SiteObservation, Basis.Missing], depth.Bases);
    }

    [Fact]
    public void With_LeavesOutDaysBeyondTheSpan()
    {
        var signals = Build();

        var read = signals.With(
            [new SiteReading(SignalKind.SnowDepthCm, 5, NewYear.PlusDays(-9), NewYear.PlusDays(90))]);

        Assert.Equal([5, 5, 5, 5], read[SignalKind.SnowDepthCm]!.Values);
        Assert.Same(signals, signals.With(Array.Empty<SiteReading>()));
    }

    [Fact]
    public void With_CountsTheLastOfSeveralReadings()
    {
        var signals = Build().With(
        [
            new SiteReading(SignalKind.FrostDepthCm, 20, NewYear, NewYear.PlusDays(3)),
            new SiteReading(SignalKind.FrostDepthCm, 5, NewYear.PlusDays(2), NewYear.PlusDays(3)),
        ]);

        Assert.Equal([20, 20, 5, 5], signals[SignalKind.FrostDepthCm]!.Values);
    }

    [Fact]
    public void With_CarriesAReadingOnToWhatIsWorkedOutFromIt()
    {
        var before = Build();

        var after = before.With([new SiteReading(SignalKind.MinTemperatureC, -30, NewYear, NewYear)]);

        var (chill, was) = (after[SignalKind.WindChillC]!, before[SignalKind.WindChillC]!);
        Assert.True(chill.Values[0] < was.Values[0]);
        Assert.Equal(Basis.SiteObservation, chill.Bases[0]);
        Assert.Equal(was.Values[1..], chill.Values[1..]);
        Assert.Equal(was.Bases[1..], chill.Bases[1..]);
    }

    [Theory]
    [InlineData(SignalKind.FrostDepthCm, SiteReadingSpan.UntilItExpires)]
    [InlineData(SignalKind.SnowDepthCm, SiteReadingSpan.UntilItExpires)]
    [InlineData(SignalKind.MinTemperatureC, SiteReadingSpan.ItsDay)]
    [InlineData(SignalKind.GustMps, SiteReadingSpan.ItsDay)]
    [InlineData(SignalKind.WindAlert, null)]
    [InlineData(SignalKind.DarkShiftMinutes, null)]
    [InlineData(SignalKind.LightShiftMinutes, null)]
    [InlineData(SignalKind.FrozenGroundIndexC, null)]
    public void SpanOf_IsNothing_WhereNobodyCanReadIt(SignalKind kind, SiteReadingSpan? span) =>
        Assert.Equal(span, SiteReadings.SpanOf(kind));

    [Theory]
    [InlineData("8 in", 20.32)]
    [InlineData("20.5 cm", 20.5)]
    public void Parse_ReadsAQuantity(string text, double depthCm) => Assert.Equal(
        depthCm, RuleUnits.Parse(text, RuleUnits.For(SignalKind.FrostDepthCm), out _)!.InSignalUnit, 1e-9);

    [Theory]
    [InlineData("8", "a number, a space and a unit (in or cm)")]
    [InlineData("8 ft", "a number, a space and a unit (in or cm)")]
    [InlineData("NaN in", "0 to 400 in")]
    [InlineData("-1 in", "0 to 400 in")]
    [InlineData("401 in", "0 to 400 in")]
    [InlineData(null, "a number, a space and a unit (in or cm)")]
    public void Parse_NamesWhatIsAccepted(string? text, string accepted)
    {
        Assert.Null(RuleUnits.Parse(text, RuleUnits.For(SignalKind.FrostDepthCm), out var said));
        Assert.Equal(accepted, said);
    }

    private static SignalSet Build() => SignalSetBuilder.Build(
        new("duluth", 46.7867, -92.1005), new(NewYear, 4),
        DailySeries.Of([.. Days(DailyElement.MinTemperatureC, -10), .. Days(DailyElement.WindMps, 6)]), null,
        DateTimeZoneProviders.Tzdb["America/Chicago"], WorkShift.Default, AlertReport.None);

    private static IEnumerable<DailyReading> Days(DailyElement element, double value) =>
        Enumerable.Range(0, 4).Select(day => new DailyReading(NewYear.PlusDays(day), element, value, null));
}
