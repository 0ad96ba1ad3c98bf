using NodaTime;
using WorkWindows.Engine.Climatology;

namespace WorkWindows.Engine.Chances;

/// <summary>On which dates something happens in the members of an ensemble.</summary>
/// <param name="Happens">In how many members it is known to happen.</param>
/// <param name="Unknown">In how many members it is not known whether or when it happens.</param>
/// <param name="Members">How many members there are.</param>
/// <param name="P10">
/// The date by which it happens with a chance of one in ten, of the members in which it happens, rounded to whole days;
/// null when it happens in none, or when too many members do not know. Quantiles of type 8.
/// </param>
/// <param name="P50">The same with one in two.</param>
/// <param name="P90">The same with nine in ten.</param>
public readonly record struct DateSpread(
    int Happens, int Unknown, int Members, LocalDate? P10, LocalDate? P50, LocalDate? P90)
{
    private const double Early = 0.1, Middle = 0.5, Late = 0.9;

    /// <summary>How many members know whether and when it happens.</summary>
    public int Known => Members - Unknown;

    /// <summary>Whether enough members know for anything to be told.</summary>
    public bool IsTold => Members > 0 && Unknown <= Shares.MostUnknown * Members;

    /// <param name="dates">One a member that knows; null where it does not happen.</param>
    /// <param name="unknown">How many members do not know.</param>
    public static DateSpread Of(IEnumerable<LocalDate?> dates, int unknown = 0)
    {
        var all = dates.ToList();
        var happened = all.OfType<LocalDate>().ToList();
        var spread = new DateSpread(happened.Count, unknown, all.Count + unknown, null, null, null);
        if (happened.Count == 0 || !spread.IsTold)
            return spread;
        var first = happened.Min();
        double[] days = [.. happened.Select(date => (double)Period.DaysBetween(first, date))];
        return spread with { P10 = At(Early), P50 = At(Middle), P90 = At(Late) };

        LocalDate At(double share) => first.PlusDays((int)Math.Round(Quantile.Of(days, share)));
    }
}
