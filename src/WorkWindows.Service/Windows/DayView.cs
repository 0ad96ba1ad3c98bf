using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Service.Windows;

/// <summary>Why a day is as it is.</summary>
/// <param name="Date">The day.</param>
/// <param name="State">What may be done.</param>
/// <param name="Rules">The rules that spoke or are lifted, those that decide the state first.</param>
public sealed record DayView(LocalDate Date, DayState State, IReadOnlyList<RuleView> Rules)
{
    public static DayView Of(Explanation explanation)
    {
        var deciding = explanation.Deciding.ToHashSet();
        return new(explanation.Day, explanation.State,
        [
            .. explanation.Verdicts.Where(verdict => verdict.Spoke || verdict.Lifting is not null)
                .OrderByDescending(deciding.Contains)
                .Select(verdict => RuleView.Of(verdict, deciding.Contains(verdict), explanation.Day)),
        ]);
    }
}

/// <summary>A rule that spoke on a day, or would have if it were not lifted.</summary>
/// <param name="Id">Its key in the pack.</param>
/// <param name="Title">What it says, in a few words.</param>
/// <param name="Effect">What it does to a day on which it holds.</param>
/// <param name="Truth">Whether it holds.</param>
/// <param name="Decides">It made the state of the day.</param>
/// <param name="InventoryMissing">It asks for species, and the parcel has no inventory.</param>
/// <param name="Because">Why the effect follows.</param>
/// <param name="Measure">What must be done, or null.</param>
/// <param name="Findings">What its condition found.</param>
/// <param name="Authority">How binding it is.</param>
/// <param name="Source">Where it is stated.</param>
/// <param name="OutsideValidYears">Its source speaks of other years than the day's.</param>
/// <param name="ValidFrom">The first year that its source speaks of, or null.</param>
/// <param name="ValidTo">The last one, or null.</param>
/// <param name="Pack">The key and version of the pack that it stands in.</param>
/// <param name="Lifting">What takes away what it would say, or null.</param>
/// <param name="MayBeExcepted">Whether a person can make an exception to it.</param>
public sealed record RuleView(
    string Id, string Title, Effect Effect, Truth Truth, bool Decides, bool InventoryMissing, string Because,
    string? Measure, IReadOnlyList<FindingView> Findings, Authority Authority, RuleSource Source,
    bool OutsideValidYears, int? ValidFrom, int? ValidTo, string Pack, Lifting? Lifting, bool MayBeExcepted)
{
    internal static RuleView Of(RuleVerdict verdict, bool decides, LocalDate day)
    {
        var rule = verdict.Rule;
        return new(rule.Id, rule.Title, rule.Effect, verdict.Truth, decides, verdict.InventoryMissing, rule.Because,
            rule.Measure, [.. verdict.Findings.Select(FindingView.Of)], rule.Authority, rule.Source,
            verdict.OutsideValidYears(day), rule.Valid.From, rule.Valid.To, $"{verdict.Pack.Id} {verdict.Pack.Version}",
            verdict.Lifting, rule.MayBeExcepted);
    }
}

/// <summary>What one comparison or calendar range of a rule found.</summary>
/// <param name="Sentence">All of it in plain words.</param>
/// <param name="Truth">Whether it holds.</param>
/// <param name="Basis">How the value is known.</param>
/// <param name="Signal">What is compared; null for a range of the calendar.</param>
/// <param name="Value">The value; null when missing.</param>
/// <param name="Relation">How it must lie to the threshold; null for a range.</param>
/// <param name="Threshold">The threshold; null for a range.</param>
/// <param name="Margin">How far the value lies on the side where the comparison holds; days left in a range.</param>
/// <param name="Unit">The unit of value, threshold and margin.</param>
/// <param name="From">The first day of the range; null for a comparison.</param>
/// <param name="To">Its last day.</param>
public sealed record FindingView(
    string Sentence, Truth Truth, Basis Basis, SignalKind? Signal, double? Value, Relation? Relation,
    double? Threshold, double? Margin, string Unit, LocalDate? From, LocalDate? To)
{
    private const string Days = "d";

    internal static FindingView Of(Finding finding) => finding switch
    {
        SignalFinding signal => new(
            Wording.Of(signal), signal.Truth, signal.Basis, signal.Compare.Signal, signal.Value,
            signal.Compare.Relation, signal.Compare.Threshold.Value, signal.Margin,
            signal.Compare.Threshold.Unit.Symbol(), null, null),
        CalendarFinding calendar => new(
            Wording.Of(calendar), calendar.Truth, calendar.Basis, null, null, null, null, calendar.MarginDays, Days,
            calendar.From, calendar.To),
        SumFinding sum => new(
            Wording.Of(sum), sum.Truth, sum.Basis, null, sum.Known, sum.Sum.Relation, sum.Sum.Threshold.Value,
            sum.Margin, sum.Sum.Threshold.Unit.Symbol(), sum.Since, null),
        LatchFinding latch => new(
            Wording.Of(latch), latch.Truth, latch.Basis, latch.Latched.Starts.Signal, latch.Value, null, null, null,
            latch.Latched.Starts.Threshold.Unit.Symbol(), latch.Since, null),
        OnsetFinding onset => new(
            Wording.Of(onset), onset.Truth, onset.Basis, null, null, null, null, null, Days, onset.From, onset.To),
        AlertFinding alert => new(
            Wording.Of(alert), alert.Truth, alert.Basis, alert.Alert, null, null, null, null, "", null, null),
        _ => throw new ArgumentException($"{finding.GetType().Name} cannot be shown."),
    };
}
