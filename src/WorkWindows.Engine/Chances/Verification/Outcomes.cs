using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Chances.Verification;

/// <summary>What the engine says of a task on every day of a whole record.</summary>
internal sealed class Outcomes(TaskEvaluation evaluation)
{
    /// <summary>Whether a day was workable; null when it is unknown or outside the record.</summary>
    public bool? On(LocalDate date)
    {
        var day = evaluation.Span.IndexOf(date);
        return day < 0 || day >= evaluation.Span.Count || evaluation.Unknown[day] ? null : evaluation.Workable[day];
    }

    /// <summary>
    /// The share of other years in which each calendar day was workable, 0 to 1, as it is and drawn towards the days
    /// around as chances are; null where too few of the years know.
    /// </summary>
    /// <param name="days">The days.</param>
    /// <param name="issuedYear">The year that <paramref name="years"/> stand in the place of.</param>
    /// <param name="years">The other years.</param>
    public ImmutableArray<(double Share, double Smoothed)?> Climatology(
        DaySpan days, int issuedYear, ImmutableArray<int> years)
    {
        var (workable, unknown) = (new int[days.Count], new int[days.Count]);
        for (var day = 0; day < days.Count; day++)
        {
            foreach (var year in years)
            {
                var was = On(days[day].PlusYears(year - issuedYear));
                workable[day] += was == true ? 1 : 0;
                unknown[day] += was is null ? 1 : 0;
            }
        }
        return
        [
            .. Shares.Of(workable, unknown, years.Length).Select((share, day) => share is { } smoothed
                ? ((double)workable[day] / (years.Length - unknown[day]), smoothed)
                : ((double, double)?)null),
        ];
    }

    /// <summary>The leaf-out that came after a day in its own year, or null.</summary>
    public LocalDate? LeafOut(LocalDate issued) =>
        evaluation.Signals.Event(SeasonEventKind.LeafOut, issued.Year) is { Basis: Basis.Observed } e && e.Date > issued
            ? e.Date
            : null;
}
