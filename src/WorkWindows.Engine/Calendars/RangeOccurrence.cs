using NodaTime;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Calendars;

/// <summary>One year's turn of a range, both ends included, and how its ends are known.</summary>
/// <param name="From">The first day; the earliest that it can be where an event is not known.</param>
/// <param name="To">The last day; the latest that it can be where an event is not known.</param>
/// <param name="Basis">
/// Calendar where both ends are; otherwise that of the end that is known least; Missing where an event is not known.
/// </param>
public readonly record struct RangeOccurrence(LocalDate From, LocalDate To, Basis Basis);

/// <summary>
/// An end of a range in one year: a day, or two days that it lies between while its event is not known.
/// </summary>
internal readonly record struct RangeEnd(LocalDate Earliest, LocalDate Latest, Basis Basis)
{
    public static RangeEnd? Of(YearlyDate date, int year, SignalSet signals) => date switch
    {
        EventDate known when signals.Event(known.Event, year) is { } happened =>
            // An event outside its bounds must not turn the range inside out.
            On(Within(happened.Date, known, year).PlusDays(known.PlusDays), happened.Basis),
        EventDate unknown => Nominal(unknown, year),
        _ => Nominal(date, year),
    };

    /// <summary>The end as the calendar alone gives it, whether its event is known or not.</summary>
    public static RangeEnd? Nominal(YearlyDate date, int year)
    {
        if (date is EventDate e)
        {
            return new(
                e.NotBefore.Resolve(year)!.Value.PlusDays(e.PlusDays),
                e.NotAfter.Resolve(year)!.Value.PlusDays(e.PlusDays),
                Basis.Missing);
        }
        return date.Resolve(year) is { } day ? On(day, Basis.Calendar) : null;
    }

    private static LocalDate Within(LocalDate happened, EventDate known, int year) => LocalDate.Max(
        known.NotBefore.Resolve(year)!.Value, LocalDate.Min(happened, known.NotAfter.Resolve(year)!.Value));

    private static RangeEnd On(LocalDate day, Basis basis) => new(day, day, basis);
}
