using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Chances.Verification;

/// <summary>
/// Gives chances as of many days of past years, none of which saw the days after it, and compares them with what the
/// engine says of those days now that they are over.
/// </summary>
/// <remarks>Source: docs/rules/chances.md.</remarks>
public static class Backtest
{
    /// <param name="site">A place with its record and tasks.</param>
    /// <param name="packs">The rules. Those that ask for what the record does not have are left out and named.</param>
    /// <param name="plan">Which days, and how far ahead.</param>
    public static BacktestResult Of(BacktestSite site, ImmutableArray<RulePack> packs, BacktestPlan plan)
    {
        if (site.Observed[DailyElement.MinTemperatureC] is not { } min)
            return BacktestResult.None;
        var record = DaySpan.Between(new(min.First.Year, 1, 1), new(min.Last.Year, 12, 31));
        var signals = SignalSetBuilder.Build(
            site.Point, record, site.Observed, null, site.Zone, WorkShift.Default, AlertReport.None);
        var (kept, leftOut) = MeasuredRules.Of(packs, signals);
        var truth = new PointRules(kept, signals);
        var outcomes = site.Tasks.Select(task => new Outcomes(truth.Evaluate(task))).ToList();
        var tally = new BacktestTally(plan.LeadDays);
        var past = new PastWeather(site.Observed);
        var years = Enumerable.Range(record.First.Year, record.Last.Year - record.First.Year + 1).ToList();
        foreach (var issued in years.TakeLast(plan.Years).SelectMany(
            year => plan.IssueDays.Select(day => day.InYear(year))))
        {
            // The nearest ones, on both sides, so that as many tell the first years as the last.
            var others = years.Where(year => year != issued.Year && past.Covers(year, issued, plan.LeadDays))
                .OrderBy(year => Math.Abs(year - issued.Year)).Take(Ensemble.UsualYears).ToImmutableArray();
            if (others.Length >= Ensemble.MinYears && past.Covers(issued.Year, issued, plan.LeadDays))
                Tally(tally, site, kept, past, issued, others, outcomes);
        }
        return tally.Result(leftOut);
    }

    private static void Tally(
        BacktestTally tally, BacktestSite site, ImmutableArray<RulePack> packs, PastWeather past, LocalDate issued,
        ImmutableArray<int> years, List<Outcomes> outcomes)
    {
        var days = new DaySpan(issued.PlusDays(1), tally.LeadDays);
        var span = DaySpan.Between(Lookback.Before(days.First, packs), days.Last);
        var calendar = SignalSetBuilder.Build(
            site.Point, span, DailySeries.Empty, null, site.Zone, WorkShift.Default, AlertReport.None);
        var rules = new ChanceRules(
            packs, Ensemble.AsOf(past, calendar, issued, site.Point.LatitudeDeg, years));
        for (var task = 0; task < outcomes.Count; task++)
        {
            var chances = rules.Of(site.Tasks[task], days);
            var climatology = outcomes[task].Climatology(days, issued.Year, years);
            for (var day = 0; day < days.Count; day++)
            {
                if (outcomes[task].On(days[day]) is { } workable && chances[days[day]].Share is { } chance
                    && climatology[day] is var (share, smoothed))
                {
                    tally.Add(day + 1, chance, share, smoothed, workable);
                }
            }
        }
        tally.AddLeafOut(issued, rules.Ensemble, outcomes[0].LeafOut(issued));
    }
}

/// <summary>A place to look back at.</summary>
/// <param name="Point">The place.</param>
/// <param name="Zone">Its time zone.</param>
/// <param name="Observed">Its record.</param>
/// <param name="Tasks">At least one.</param>
public sealed record BacktestSite(
    WeatherPoint Point, DateTimeZone Zone, DailySeries Observed, ImmutableArray<TaskFacts> Tasks);

/// <summary>How to look back.</summary>
/// <param name="IssueDays">The days of each year as of whose evening chances are given.</param>
/// <param name="LeadDays">How many days after each.</param>
/// <param name="Years">How many years, the last ones of the record.</param>
public sealed record BacktestPlan(ImmutableArray<AnnualDate> IssueDays, int LeadDays, int Years)
{
    /// <summary>The 1st, 11th and 21st of each month of thirty years, 60 days ahead.</summary>
    public static BacktestPlan Usual { get; } = new(
        [.. Enumerable.Range(1, 12).SelectMany(month => new[] { 1, 11, 21 }.Select(day => new AnnualDate(month, day)))],
        LeadDays: 60, Years: 30);
}
