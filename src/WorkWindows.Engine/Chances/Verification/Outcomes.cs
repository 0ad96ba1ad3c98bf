using System.Collections.Immutable;
using NodaTime;
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
    /// The share of other years in which the same calendar day was workable, 0 to 1; null when it is known of none.
    /// </summary>
    /// <param name="date">The day.</param>
    /// <param name="issuedYear">The year that <paramref name="years"/> stand in the place of.</param>
    /// <param name="years">The other years.</param>
    public double? Climatology(LocalDate date, int issuedYear, ImmutableArray<int> years)
    {
        var (workable, known) = (0, 0);
        foreach (var year in years)
        {
            if (On(date.PlusYears(year - issuedYear)) is not { } was)
                continue;
            known++;
            workable += was ? 1 : 0;
        }
        return known == 0 ? null : (double)workable / known;
    }

    /// <summary>The leaf-out that came after a day in its own year, or null.</summary>
    public LocalDate? LeafOut(LocalDate issued) =>
        evaluation.Signals.Event(SeasonEventKind.LeafOut, issued.Year) is { Basis: Basis.Observed } e && e.Date > issued
            ? e.Date
            : null;
}
