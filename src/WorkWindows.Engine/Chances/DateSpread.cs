using NodaTime;
using WorkWindows.Engine.Climatology;
using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Chances;

/// <summary>On which dates something happens in the members of an ensemble.</summary>
/// <param name="Happens">In how many members it happens.</param>
/// <param name="Members">How many members there are.</param>
/// <param name="P10">
/// The date by which it happens with a chance of one in ten, of the members in which it happens, rounded to whole days;
/// null when it happens in none. Quantiles of type 8.
/// </param>
/// <param name="P50">The same with one in two.</param>
/// <param name="P90">The same with nine in ten.</param>
public readonly record struct DateSpread(int Happens, int Members, LocalDate? P10, LocalDate? P50, LocalDate? P90)
{
    private const double Early = 0.1, Middle = 0.5, Late = 0.9;

    internal static DateSpread Of(IEnumerable<int?> indices, DaySpan days) =>
        Of(indices.Select(index => index is { } day ? days[day] : (LocalDate?)null));

    /// <param name="dates">One a member; null where it does not happen.</param>
    public static DateSpread Of(IEnumerable<LocalDate?> dates)
    {
        var all = dates.ToList();
        var known = all.OfType<LocalDate>().ToList();
        if (known.Count == 0)
            return new(0, all.Count, null, null, null);
        var first = known.Min();
        double[] days = [.. known.Select(date => (double)Period.DaysBetween(first, date))];
        return new(known.Count, all.Count, At(Early), At(Middle), At(Late));

        LocalDate At(double share) => first.PlusDays((int)Math.Round(Quantile.Of(days, share)));
    }
}
