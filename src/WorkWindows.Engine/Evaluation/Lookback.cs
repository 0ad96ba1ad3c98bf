using NodaTime;
using WorkWindows.Engine.Calendars;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Evaluation;

/// <summary>How far before a day signals must reach for the conditions of rules to be known on it.</summary>
public static class Lookback
{
    // Ground that froze in autumn may lie between the two limits of a rule for months.
    private static readonly FixedDate FrostYear = new(7, 1);

    /// <summary>The first day whose signals may matter to what the rules say of a day.</summary>
    public static LocalDate Before(LocalDate day, IEnumerable<RulePack> packs) => packs
        .SelectMany(pack => pack.Rules).Select(rule => Of(rule.When, day)).Append(day).Min();

    internal static LocalDate Of(Condition condition, LocalDate day) => condition switch
    {
        AllOf all => all.Parts.Min(part => Of(part, day)),
        AnyOf any => any.Parts.Min(part => Of(part, day)),
        Not not => Of(not.Part, day),
        InRange or InForce or Compare => day,
        InARow row => day.PlusDays(1 - row.Days),
        Latched => YearlyDates.LastOnOrBefore(FrostYear, day),
        Sum sum => Sums.FirstDay(sum, day),
        Onset onset => Of(onset.First, Start(onset.Within, day)),
        _ => throw new ArgumentException($"{condition.GetType().Name} is not a condition that can be evaluated."),
    };

    /// <summary>The start of the last turn of a range that began by a day.</summary>
    private static LocalDate Start(CalendarRange range, LocalDate day) => Enumerable.Range(0, 3)
        .Select(back => range.From.Resolve(day.Year + 1 - back)).OfType<LocalDate>()
        .Where(start => start <= day).DefaultIfEmpty(day).Max();
}
