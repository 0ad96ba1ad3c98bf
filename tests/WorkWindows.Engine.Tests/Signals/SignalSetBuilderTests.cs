using NodaTime;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Decisions;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Tests.Weather;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Signals;

public sealed class SignalSetBuilderTests
{
    private static readonly WeatherPoint Duluth = new("duluth", 46.7867, -92.1005);
    private static readonly DateTimeZone Chicago = DateTimeZoneProviders.Tzdb["America/Chicago"];
    private static readonly Instant Issued = Instant.FromUtc(2026, 1, 3, 12, 0);
    private static readonly LocalDate NewYear = new(2026, 1, 1);

    [Fact]
    public void Build_PrefersObservedToForecastToNothing()
    {
        var observed = DailySeries.Of([Min(0, -8), Min(2, -6)]);
        var forecast = new Forecast(Issued, DailySeries.Of([Min(1, -3), Min(2, -2), Min(3, -1)]));
        var signals = Build(5, observed, forecast);
        var min = signals[SignalKind.MinTemperatureC]!;

        Assert.Equal([-8, -3, -6, -1, double.NaN], min.Values);
        Assert.Equal([Basis.Observed, Basis.Forecast, Basis.Observed, Basis.Forecast, Basis.Missing], min.Bases);
        Assert.Equal(Issued, signals.ForecastIssued);
    }

    [Fact]
    public void Build_TellsWhatWasWorkedOutFromWhatWasRead()
    {
        var column = new DailyColumn(NewYear, [-8, -7, -6, double.NaN], RejectedCount: 0, ReadsUsUnits: false)
        {
            // Its own reading, a blend that it is part of, another station's, nothing.
            Contributors = [1, 1 | DailyColumn.Blended, 2, 0],
        };
        var observed = DailySeries.Of([Wind(0), Wind(1), Wind(2)]).With(DailyElement.MinTemperatureC, column);

        var signals = Build(4, observed, null);

        Basis[] expected = [Basis.Observed, Basis.Interpolated, Basis.Interpolated, Basis.Missing];
        Assert.Equal(expected, signals[SignalKind.MinTemperatureC]!.Bases);
        Assert.Equal(expected, signals[SignalKind.WindChillC]!.Bases);
        Assert.Equal(expected, Snapshot.Read(Snapshot.Write(signals))[SignalKind.MinTemperatureC]!.Bases);
    }

    // Decisions that were stored keep one digit a day for the basis.
    [Theory]
    [InlineData(Basis.Missing, 0)]
    [InlineData(Basis.Observed, 1)]
    [InlineData(Basis.Forecast, 2)]
    [InlineData(Basis.Climatology, 3)]
    [InlineData(Basis.Calendar, 4)]
    [InlineData(Basis.SiteObservation, 5)]
    [InlineData(Basis.Alert, 6)]
    [InlineData(Basis.Interpolated, 7)]
    public void Basis_KeepsItsNumber(Basis basis, int number) => Assert.Equal(number, (int)basis);

    [Fact]
    public void Build_HasEveryKindOfSignal()
    {
        var signals = Build(3, DailySeries.Empty, null);

        Assert.Equal(Enum.GetValues<SignalKind>(), signals.Signals.Keys);
        Assert.All(signals[SignalKind.GustMps]!.Bases, basis => Assert.Equal(Basis.Missing, basis));
        Assert.Null(signals.ForecastIssued);
        Assert.Empty(signals.Events);
    }

    [Fact]
    public void Build_KnowsDaylightByTheCalendar()
    {
        var signals = Build(15, DailySeries.Empty, null);
        var (light, dark) = (signals[SignalKind.LightShiftMinutes]!, signals[SignalKind.DarkShiftMinutes]!);

        // 15 January: sunset at 16:46:35, 13 minutes before the end of the shift.
        Assert.Equal((527, 13), (light.Values[14], dark.Values[14]));
        Assert.All(light.Bases.Concat(dark.Bases), basis => Assert.Equal(Basis.Calendar, basis));
    }

    [Theory]
    [InlineData(true, 20)]
    [InlineData(false, 19.94)]
    public void Build_RestoresWhatWasRead_OnlyOfStationsThatReadUsUnits(bool readsUsUnits, double minF)
    {
        var min = Build(1, DailySeries.Of([Min(0, -6.7)], readsUsUnits), null)[SignalKind.MinTemperatureC]!;

        Assert.Equal(new Threshold(minF, RuleUnit.DegF).InSignalUnit, min.Values[0], 1e-9);
    }

    [Fact]
    public void Build_PredictsLeafOutOfEachYearOfTheSpan()
    {
        var record = SteadyRecord.Of(DaySpan.Between(new(2015, 1, 1), NewYear), _ => 6);
        var span = DaySpan.Between(new(2025, 11, 1), new(2026, 3, 1));
        var signals = SignalSetBuilder.Build(
            Duluth, span, DailySeries.Of(record), null, Chicago, WorkShift.Default, AlertReport.None);

        Assert.Equal(
            [
                new SeasonEvent(
                    SeasonEventKind.LeafOut, new(2025, 5, 18), Basis.Observed, 0, new(2025, 5, 8), new(2025, 5, 28)),
                new SeasonEvent(
                    SeasonEventKind.LeafOut, new(2026, 5, 18), Basis.Climatology, 11, new(2026, 5, 8),
                    new(2026, 5, 28)),
            ],
            signals.Events.Where(e => e.Kind == SeasonEventKind.LeafOut));
    }

    private static SignalSet Build(int days, DailySeries observed, Forecast? forecast) => SignalSetBuilder.Build(
        Duluth, new(NewYear, days), observed, forecast, Chicago, WorkShift.Default, AlertReport.None);

    private static DailyReading Min(int day, double valueC) =>
        new(NewYear.PlusDays(day), DailyElement.MinTemperatureC, valueC, null);

    private static DailyReading Wind(int day) => new(NewYear.PlusDays(day), DailyElement.WindMps, 5, null);
}
