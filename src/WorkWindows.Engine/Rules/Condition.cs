using System.Collections.Immutable;
using WorkWindows.Engine.Calendars;
using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Rules;

/// <summary>What must be so on a day for a rule to speak. Structured data, not a formula.</summary>
public abstract record Condition;

/// <summary>Every part holds.</summary>
public sealed record AllOf(ImmutableArray<Condition> Parts) : Condition;

/// <summary>At least one part holds.</summary>
public sealed record AnyOf(ImmutableArray<Condition> Parts) : Condition;

/// <summary>The part does not hold.</summary>
public sealed record Not(Condition Part) : Condition;

/// <summary>The day lies in a range of the calendar.</summary>
public sealed record InRange(CalendarRange Range) : Condition;

/// <summary>A weather service's alert is in force on the day.</summary>
/// <param name="Alert">One of the alert signals.</param>
public sealed record InForce(SignalKind Alert) : Condition;

/// <summary>A signal stands in a relation to a threshold.</summary>
/// <param name="Signal">The signal.</param>
/// <param name="Relation">The relation.</param>
/// <param name="Threshold">The threshold, in the unit that the pack states it in.</param>
public sealed record Compare(SignalKind Signal, Relation Relation, Threshold Threshold) : Condition;

/// <summary>The comparison has held on this day and on the days before it, this many in a row at least.</summary>
public sealed record InARow(Compare Each, int Days) : Condition;

/// <summary>
/// A state with two limits: it begins on a day on which the first comparison holds, and lasts until a day on which the
/// second does.
/// </summary>
/// <param name="Starts">Begins the state.</param>
/// <param name="Ends">Ends it; of the same signal.</param>
public sealed record Latched(Compare Starts, Compare Ends) : Condition;

/// <summary>Something summed up until this day stands in a relation to a threshold.</summary>
/// <remarks>Nothing that is summed is ever negative, so that a sum whose known part is enough is enough.</remarks>
public abstract record Sum(Relation Relation, Threshold Threshold) : Condition;

/// <summary>The total of a signal over this day and the days before it.</summary>
/// <param name="Signal">A signal that is never negative.</param>
/// <param name="Days">How many days, this one included.</param>
/// <param name="Relation">The relation.</param>
/// <param name="Threshold">The threshold.</param>
public sealed record TotalOver(SignalKind Signal, int Days, Relation Relation, Threshold Threshold)
    : Sum(Relation, Threshold);

/// <summary>The heat since a day of the year, in degree-days.</summary>
/// <param name="Heat">How a day's heat is counted.</param>
/// <param name="Since">The first day that counts; the sum begins anew on it every year.</param>
/// <param name="Relation">The relation.</param>
/// <param name="Threshold">The threshold, in degree-days.</param>
public sealed record HeatSince(HeatCount Heat, FixedDate Since, Relation Relation, Threshold Threshold)
    : Sum(Relation, Threshold);

/// <summary>How the degree-days of a day are counted.</summary>
/// <param name="Method">The method; a number is valid only with the method that it was fitted with.</param>
/// <param name="Base">The temperature above which heat counts.</param>
/// <param name="Upper">The temperature above which more heat counts no more, or null.</param>
public sealed record HeatCount(DegreeDayMethod Method, Threshold Base, Threshold? Upper);

/// <summary>
/// The first day of a range on which a condition holds has come: from then on the condition holds until the range
/// ends.
/// </summary>
/// <param name="First">What must hold once.</param>
/// <param name="Within">The range, whose ends no event of nature moves.</param>
public sealed record Onset(Condition First, CalendarRange Within) : Condition;

/// <summary>How a value stands to a threshold.</summary>
public enum Relation
{
    Below,
    AtMost,
    AtLeast,
    Above,
}
