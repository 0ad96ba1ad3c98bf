using System.Collections.Immutable;
using WorkWindows.Engine.Calendars;
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

/// <summary>A signal stands in a relation to a threshold.</summary>
/// <param name="Signal">The signal.</param>
/// <param name="Relation">The relation.</param>
/// <param name="Threshold">The threshold, in the unit that the pack states it in.</param>
public sealed record Compare(SignalKind Signal, Relation Relation, Threshold Threshold) : Condition;

/// <summary>The comparison has held on this day and on the days before it, this many in a row at least.</summary>
public sealed record InARow(Compare Each, int Days) : Condition;

/// <summary>How a value stands to a threshold.</summary>
public enum Relation
{
    Below,
    AtMost,
    AtLeast,
    Above,
}
