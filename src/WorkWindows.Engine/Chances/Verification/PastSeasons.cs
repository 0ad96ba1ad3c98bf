using System.Collections.Immutable;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Chances.Verification;

/// <summary>What the rules say of all days of a record, now that they are over.</summary>
/// <param name="Days">Whole years.</param>
/// <param name="Workable">For each task the days on which it could be worked.</param>
/// <param name="LeftOut">The rules that ask for what the record does not have, and are not looked at.</param>
public sealed record PastSeasons(DaySpan Days, ImmutableArray<DayBits> Workable, ImmutableArray<string> LeftOut)
{
    /// <param name="site">A place with its record and tasks.</param>
    /// <param name="packs">The rules.</param>
    /// <exception cref="ArgumentException">The record has no minimum temperatures.</exception>
    public static PastSeasons Of(BacktestSite site, ImmutableArray<RulePack> packs)
    {
        var min = site.Observed[DailyElement.MinTemperatureC]
            ?? throw new ArgumentException("The record has no minimum temperatures.", nameof(site));
        var record = DaySpan.Between(new(min.First.Year, 1, 1), new(min.Last.Year, 12, 31));
        var signals = SignalSetBuilder.Build(
            site.Point, record, site.Observed, null, site.Zone, WorkShift.Default, AlertReport.None);
        var (kept, leftOut) = MeasuredRules.Of(packs, signals);
        var rules = new PointRules(kept, signals);
        return new(
            record,
            [.. site.Tasks.Select(rules.Evaluate).Select(task => DayBits.Where(
                record.Count, day => task[record[day]] is DayState.Open or DayState.Limited))],
            leftOut);
    }
}
