using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Service.Windows;

/// <summary>
/// The days before the first one asked for that an evaluation starts with, so that runs, sums and states which began
/// earlier are known.
/// </summary>
internal static class LeadIn
{
    public static DaySpan Before(DaySpan days, IEnumerable<RulePack> packs) =>
        DaySpan.Between(Lookback.Before(days.First, packs), days.Last);
}
