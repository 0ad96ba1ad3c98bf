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
/// <param name="Truth">
/// Whether the day lies in the range; unknown when an end depends on an event that is not known.
/// </param>
/// <param name="Basis">Calendar, or how the event is known.</param>
/// <param name="Event">The event of nature that moves an end; null for a range of the calendar alone.</param>
public sealed record CalendarFinding(
    LocalDate From, LocalDate To, int MarginDays, Truth Truth, Basis Basis, SeasonEventKind? Event)
    : Finding(Truth, Basis)
{
    public LocalDate Day => MarginDays < 0 ? From.PlusDays(MarginDays) : To.PlusDays(-MarginDays);
}

/// <summary>A sum against a threshold.</summary>
/// <param name="Sum">What is summed, and its limit.</param>
/// <param name="Known">The sum of the days that have a value, in the threshold's unit.</param>
/// <param name="MissingDays">The days that count and have none.</param>
/// <param name="Since">The first day that counts.</param>
/// <param name="Truth">Whether it holds.</param>
/// <param name="Basis">How the day's own value is known.</param>
public sealed record SumFinding(Sum Sum, double Known, int MissingDays, LocalDate Since, Truth Truth, Basis Basis)
    : Finding(Truth, Basis)
{
    /// <summary>How far the known sum lies on the side where the condition holds, in the threshold's unit.</summary>
    public double Margin => Sum.Relation switch
    {
        Relation.Below or Relation.AtMost => Sum.Threshold.Value - Known,
        Relation.AtLeast or Relation.Above => Known - Sum.Threshold.Value,
    };
}

/// <summary>A state with two limits.</summary>
/// <param name="Latched">Its limits.</param>
/// <param name="Value">The value in the unit of the limit that begins it; null when missing.</param>
/// <param name="Since">The day from which on the state has been as it is; null when it cannot be known.</param>
/// <param name="Truth">Whether the state lasts.</param>
/// <param name="Basis">How the value is known.</param>
public sealed record LatchFinding(Latched Latched, double? Value, LocalDate? Since, Truth Truth, Basis Basis)
    : Finding(Truth, Basis);

/// <summary>Whether something has come for the first time in a range.</summary>
/// <param name="From">The first day of the range that the day lies in, or else of the next one.</param>
/// <param name="To">Its last day.</param>
/// <param name="CameOn">The day on which it came, or the first day of the signals if it had come before.</param>
/// <param name="Truth">Whether it has come and the range still lasts.</param>
public sealed record OnsetFinding(LocalDate From, LocalDate To, LocalDate? CameOn, Truth Truth)
    : Finding(Truth, Truth == Truth.Unknown ? Basis.Missing : Basis.Calendar);

/// <summary>Whether an alert is in force.</summary>
public sealed record AlertFinding(SignalKind Alert, Truth Truth, Basis Basis) : Finding(Truth, Basis);
