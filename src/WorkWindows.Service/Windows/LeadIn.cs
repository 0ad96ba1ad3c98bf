using WorkWindows.Engine.Days;

namespace WorkWindows.Service.Windows;

/// <summary>
/// The days before the first one asked for that an evaluation starts with, so that runs of days which began earlier are
/// known. Rule packs may ask for runs of up to 60 days.
/// </summary>
internal static class LeadIn
{
    private const int Days = 60;

    public static DaySpan Before(DaySpan days) => new(days.First.PlusDays(-Days), days.Count + Days);
}
