using NodaTime;
using WorkWindows.Engine.Chances;
using WorkWindows.Engine.Days;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Chances;

/// <summary>What past years say of a task's coming days, as its season's page tells it.</summary>
/// <param name="Days">From today on.</param>
/// <param name="Years">The past years, the newest first; none when they are too few.</param>
/// <param name="UsableYears">How many there are, few or not.</param>
/// <param name="Each">The chance of each day; none without years.</param>
/// <param name="Opens">The first workable day.</param>
/// <param name="Closes">The last one before a break of two weeks or more.</param>
/// <param name="LeafOut">Leaf-out as the weather of the years brings it.</param>
/// <param name="WorkableDays">
/// The workable days to be expected until the task closes; null when that is not told.
/// </param>
/// <param name="Missing">What is not known on the first day whose chance is not told; null when all are told.</param>
public sealed record SeasonChances(
    DaySpan Days, IReadOnlyList<int> Years, int UsableYears, IReadOnlyList<DayChance> Each, DateSpread Opens,
    DateSpread Closes, DateSpread LeafOut, double? WorkableDays, string? Missing)
{
    public bool AreTold => Years.Count > 0;

    /// <summary>The first day whose chance is not told; null when all are told.</summary>
    public LocalDate? FirstUntold =>
        Enumerable.Range(0, Each.Count).FirstOrDefault(day => Each[day].Share is null, -1) is >= 0 and var day
            ? Days[day]
            : null;

    /// <summary>What the chances of a task say.</summary>
    /// <param name="input">The task.</param>
    /// <param name="days">From today on, within what was read.</param>
    public static SeasonChances Of(TaskInput input, DaySpan days)
    {
        var rules = input.Weather.Chances;
        if (rules.Ensemble.Years.IsEmpty)
            return new(days, [], rules.Ensemble.UsableYears, [], default, default, default, null, null);
        var chances = rules.Of(input.Facts, days);
        DayChance[] each = [.. Enumerable.Range(0, days.Count).Select(day => chances[days[day]])];
        var untold = Array.FindIndex(each, chance => chance.Share is null);
        var missing = untold >= 0 && rules.Unknown(input.Facts, days[untold]) is { } explanation
            ? OutlookWords.Few(explanation)
            : null;
        return new(
            days, chances.Years, rules.Ensemble.UsableYears, each, chances.Opens, chances.Closes, chances.LeafOut,
            chances.WorkableDays, missing);
    }
}
