using NodaTime;
using System.Collections.Immutable;
using WorkWindows.Engine.Chances;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Tests.Evaluation;
using WorkWindows.Engine.Tests.Weather;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Chances;

public class TaskChancesTests
{
    private const string ColdRun = "signal: min-temperature, below: 20 degF, days-in-a-row: 3";

    private static readonly LocalDate LastObserved = new(2014, 1, 31);
    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["America/Chicago"];
    private static readonly WeatherPoint Point = new("Urbana", 40.08, -88.24);

    /// <summary>
    /// Each past year is laid after what is known as if it had been forecast, and evaluated in the ordinary way. What
    /// fades is worked out here anew.
    /// </summary>
    [Fact]
    public void DayChance_IsTheShareOfYearsThatTheEngineFindsWorkable()
    {
        var observed = DailySeries.Of(Readings().Where(r => r.Date <= LastObserved), true);
        var days = DaySpan.Between(LastObserved.PlusDays(1), new(2014, 6, 30));
        var span = DaySpan.Between(LastObserved.PlusDays(-10), days.Last);
        ImmutableArray<RulePack> packs =
        [
            Given.Pack(
                Given.Rule("closes", ColdRun),
                Given.Rule("closes", "calendar: { from: { event: leaf-out, not-before: 03-15, not-after: 06-15 }, to: 07-31 }"),
                Given.Rule("closes", "signal: precipitation, total-over-days: 3, at-least: 1 in")),
        ];
        var past = new PastWeather(observed);
        var ensemble = Ensemble.Of(past, Build(observed, null), null, Point.LatitudeDeg);

        var chances = new ChanceRules(packs, ensemble).Of(Given.HingeCut, days);

        var workable = new int[days.Count];
        foreach (var year in ensemble.Years)
        {
            var follows = new Forecast(default, DailySeries.Of(Following(observed, year, past), true));
            var evaluation = new PointRules(packs, Build(observed, follows)).Evaluate(Given.HingeCut);
            for (var day = 0; day < days.Count; day++)
                workable[day] += evaluation[days[day]] is DayState.Open or DayState.Limited ? 1 : 0;
        }
        Assert.Equal(workable, Enumerable.Range(0, days.Count).Select(day => chances[days[day]].Workable));
        Assert.Contains(workable, count => count is > 5 and < 25);

        SignalSet Build(DailySeries known, Forecast? forecast) =>
            SignalSetBuilder.Build(Point, span, known, forecast, Zone, WorkShift.Default, AlertReport.None);
    }

    [Fact]
    public void Spreads_TellOpeningClosingAndTheDaysLeft()
    {
        var observed = DailySeries.Of(Readings().Where(r => r.Date <= LastObserved), true);
        var days = new DaySpan(LastObserved.PlusDays(1), 366);
        var known = SignalSetBuilder.Build(
            Point, days, observed, null, Zone, WorkShift.Default, AlertReport.None);
        ImmutableArray<RulePack> packs =
        [
            Given.Pack(
                Given.Rule("closes", "calendar: { from: { event: leaf-out, not-before: 03-15, not-after: 06-15 }, to: 07-31 }"),
                Given.Rule("closes", "calendar: { from: 10-01, to: 02-14 }")),
        ];

        var chances = new ChanceRules(packs, Ensemble.Of(new(observed), known, null, Point.LatitudeDeg))
            .Of(Given.HingeCut, days);

        Assert.Equal(new(29, 0, 29, new(2014, 2, 15), new(2014, 2, 15), new(2014, 2, 15)), chances.Opens);
        var (closes, leafOut) = (chances.Closes, chances.LeafOut);
        Assert.Equal(29, closes.Happens);
        Assert.Equal(leafOut.P10!.Value.PlusDays(-1), closes.P10);
        Assert.Equal(leafOut.P50!.Value.PlusDays(-1), closes.P50);
        Assert.Equal(leafOut.P90!.Value.PlusDays(-1), closes.P90);
        Assert.True(leafOut.P10 < leafOut.P50 && leafOut.P50 < leafOut.P90);
        Assert.InRange(
            chances.WorkableDays!.Value, Period.DaysBetween(new(2014, 2, 14), closes.P10!.Value),
            Period.DaysBetween(new(2014, 2, 14), closes.P90!.Value));
    }

    [Fact]
    public void Opens_IsNotKnown_WhenNobodyMeasuredWhatARuleAsksFor()
    {
        var observed = DailySeries.Of(Readings().Where(r => r.Date <= LastObserved), true);
        var days = new DaySpan(LastObserved.PlusDays(1), 30);
        var known = SignalSetBuilder.Build(Point, days, observed, null, Zone, WorkShift.Default, AlertReport.None);
        ImmutableArray<RulePack> packs = [Given.Pack(Given.Rule("closes", "signal: gust, above: 30 mph"))];

        var rules = new ChanceRules(packs, Ensemble.Of(new(observed), known, null, Point.LatitudeDeg));
        var chances = rules.Of(Given.HingeCut, days);

        Assert.Equal(["gusts"], Wording.Missing(rules.Unknown(Given.HingeCut, days.First)!));
        Assert.Equal(new(0, 29, 29, null, null, null), chances.Opens);
        Assert.Equal(new(0, 29, 29, null, null, null), chances.Closes);
        Assert.Null(chances.WorkableDays);
        Assert.Equal(new(0, 29, 29, null), chances[days.First]);
        Assert.Null(chances[days.First].Share);
    }

    [Fact]
    public void Indexer_RefusesADayOutside()
    {
        var days = new DaySpan(LastObserved.PlusDays(1), 30);
        var chances = new ChanceRules([], Ensemble.None).Of(Given.HingeCut, days);

        Assert.Throws<ArgumentOutOfRangeException>(() => chances[days.First.PlusDays(-1)]);
        Assert.Null(chances[days.First].Share);
    }

    private static List<DailyReading> Readings() => ReferenceStations.WithRain("USC00118740");

    private static IEnumerable<DailyReading> Following(DailySeries observed, int year, PastWeather past)
    {
        var (min, max) = (Values(DailyElement.MinTemperatureC), Values(DailyElement.MaxTemperatureC));
        foreach (var (date, tempC) in max)
        {
            yield return new(
                date, DailyElement.MaxTemperatureC, Math.Max(tempC, min.GetValueOrDefault(date, tempC)), null);
        }
        foreach (var (date, tempC) in min)
            yield return new(date, DailyElement.MinTemperatureC, tempC, null);
        foreach (var (date, mm) in Values(DailyElement.PrecipitationMm))
            yield return new(date, DailyElement.PrecipitationMm, mm, null);

        Dictionary<LocalDate, double> Values(DailyElement element)
        {
            var then = Read(observed[element]!, LastObserved.PlusYears(year - 2014), element);
            var now = Read(observed[element]!, LastObserved, element);
            var kept = past[element]!.Usual?.KeptPerDay(LastObserved);
            var values = new Dictionary<LocalDate, double>();
            for (var lead = 1; lead <= 200; lead++)
            {
                var date = LastObserved.PlusDays(lead);
                var value = Read(observed[element]!, date.PlusYears(year - 2014), element);
                if (double.IsNaN(value))
                    continue;
                if (kept is { } share)
                {
                    var movedF = (value + (now - then) * Math.Pow(share, lead)) * 1.8 + 32;
                    value = (Math.Round(movedF) - 32) / 1.8;
                }
                values[date] = value;
            }
            return values;
        }

        static double Read(DailyColumn column, LocalDate date, DailyElement element) =>
            double.IsNaN(column[date]) ? double.NaN : AsRead.Restore(element, column[date]);
    }
}
