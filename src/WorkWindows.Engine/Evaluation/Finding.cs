using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Evaluation;

/// <summary>What one comparison or one calendar range of a rule found on a day.</summary>
/// <param name="Truth">Whether it holds.</param>
/// <param name="Basis">How the value behind it is known.</param>
public abstract record Finding(Truth Truth, Basis Basis);

/// <summary>A signal against a threshold.</summary>
/// <param name="Compare">The comparison.</param>
/// <param name="Value">The value in the threshold's unit; null when missing.</param>
/// <param name="DaysInARow">The days in a row that the rule asks for; 1 for a single day.</param>
/// <param name="RunLength">The days in a row, this day the last, on which the comparison has held.</param>
/// <param name="Truth">Whether the rule's run is complete on this day.</param>
/// <param name="Basis">How the value is known.</param>
public sealed record SignalFinding(
    Compare Compare, double? Value, int DaysInARow, int RunLength, Truth Truth, Basis Basis) : Finding(Truth, Basis)
{
    /// <summary>
    /// How far the value lies on the side where the comparison holds, in the threshold's unit; negative on the other.
    /// </summary>
    public double? Margin => Compare.Relation switch
    {
        Relation.Below or Relation.AtMost => Compare.Threshold.Value - Value,
        Relation.AtLeast or Relation.Above => Value - Compare.Threshold.Value,
    };
}

/// <summary>A day against a range of the calendar.</summary>
/// <param name="From">The first day of the range that the day lies in, or else of the next one.</param>
/// <param name="To">Its last day.</param>
/// <param name="MarginDays">
/// Inside, the days left until the last one; outside, minus the days until the first one.
/// </param>
/// <param name="Truth">Whether the day lies in the range; unknown when an end depends on an event that is not known.</param>
/// <param name="Basis">Calendar, or how the event is known.</param>
public sealed record CalendarFinding(LocalDate From, LocalDate To, int MarginDays, Truth Truth, Basis Basis)
    : Finding(Truth, Basis);
