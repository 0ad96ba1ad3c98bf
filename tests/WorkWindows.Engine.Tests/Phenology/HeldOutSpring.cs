using NodaTime;
using WorkWindows.Engine.Phenology;

namespace WorkWindows.Engine.Tests.Phenology;

/// <summary>
/// One spring that was kept from the prediction, which saw the other springs of its place.
/// </summary>
/// <param name="ErrorDays">Predicted less seen.</param>
/// <param name="CalendarErrorDays">The mean day of the place's other springs less seen.</param>
/// <param name="IsInside">Whether the interval holds it.</param>
internal sealed record HeldOutSpring(double ErrorDays, double CalendarErrorDays, bool IsInside)
{
    /// <summary>Every spring of a place in turn; none of one whose springs are fewer than the least number.</summary>
    public static IReadOnlyList<HeldOutSpring> Of(ObservedPlace place, BudBreak species, int leastSprings)
    {
        var springs = place.Springs.Values.Where(day => !IsMonthMistake(place, species, day)).ToList();
        return springs.Count < leastSprings ? [] : [.. springs.Select(day => Of(place, species, springs, day))];
    }

    /// <summary>Whether a spring is a month from what the model says of its year.</summary>
    public static bool IsMonthMistake(ObservedPlace place, BudBreak species, LocalDate day)
    {
        var model = LeafOut.Predict(day.Year, day.Year, place.Record, species: species)[0];
        return Math.Abs(Period.DaysBetween(model.Date, day)) >= LeafOut.MonthMistakeDays;
    }

    private static HeldOutSpring Of(ObservedPlace place, BudBreak species, List<LocalDate> springs, LocalDate day)
    {
        var others = springs.Where(other => other != day).ToList();
        var said = LeafOut.Predict(day.Year, day.Year, place.Record, species: species, seen: others)[0];
        return new(
            Period.DaysBetween(day, said.Date),
            others.Count == 0 ? double.NaN : others.Average(other => other.DayOfYear) - day.DayOfYear,
            said.Earliest <= day && day <= said.Latest);
    }
}
