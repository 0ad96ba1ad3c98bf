using System.Globalization;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Service.Windows;

/// <summary>What one rule says of a day, as the page of the day tells it.</summary>
/// <param name="Title">The rule.</param>
/// <param name="Effect">What it does.</param>
/// <param name="Because">Why.</param>
/// <param name="Measure">What to do, where it asks for something.</param>
/// <param name="Doubts">What makes its answer uncertain, a sentence each.</param>
/// <param name="Facts">Its comparisons.</param>
/// <param name="Authority">How binding it is.</param>
/// <param name="Source">Where it is stated.</param>
/// <param name="Address">Where that can be read, if it is on the web.</param>
public sealed record RuleReason(
    string Title, string Effect, string Because, string? Measure, IReadOnlyList<string> Doubts,
    IReadOnlyList<RuleFact> Facts, string Authority, string Source, string? Address)
{
    private const int DaysInAYear = 365;
    private const string NoSource = "common practice, no source";

    public static RuleReason Of(RuleVerdict verdict, LocalDate day)
    {
        var rule = verdict.Rule;
        return new(
            rule.Title, SeasonBands.WordOf(rule.Effect), rule.Because, rule.Measure, [.. DoubtsOf(verdict, day)],
            [.. verdict.Findings.Where(finding => !IsEveryDay(finding)).Select(finding => RuleFact.Of(finding, day))],
            Wording.Of(rule.Authority), Wording.Of(SaidOnce(rule.Source)), WebAddress(rule.Source.Address));
    }

    private static IEnumerable<string> DoubtsOf(RuleVerdict verdict, LocalDate day)
    {
        if (verdict.InventoryMissing)
            yield return "The parcel has no stand inventory, so nobody knows whether its trees are meant.";
        if (verdict.Truth == Truth.Unknown && !verdict.InventoryMissing)
            yield return "A value that it needs is not known.";
        if (verdict.OutsideValidYears(day))
            yield return "Its source speaks of other years than this day's.";
    }

    private static bool IsEveryDay(Finding finding) =>
        finding is CalendarFinding range && Period.DaysBetween(range.From, range.To.PlusDays(1)) >= DaysInAYear;

    /// <summary>The authority class stands beside it.</summary>
    private static RuleSource SaidOnce(RuleSource source) =>
        source.Title == NoSource ? source with { Title = "no published source" } : source;

    private static string? WebAddress(string? address) =>
        Uri.TryCreate(address, UriKind.Absolute, out var uri) && uri.Scheme is "https" or "http" ? address : null;
}

/// <summary>A value beside its limit.</summary>
public sealed record RuleFact(string What, string Value, string Limit, string Margin, string Basis)
{
    public static RuleFact Of(Finding finding, LocalDate day) => finding switch
    {
        SignalFinding signal => Of(signal),
        CalendarFinding calendar => Of(calendar, day),
        _ => throw new ArgumentException($"{finding.GetType().Name} has no words."),
    };

    private static RuleFact Of(SignalFinding finding)
    {
        var (signal, relation, threshold) = finding.Compare;
        var unit = threshold.Unit.Symbol();
        var run = finding.DaysInARow > 1 ? $", {finding.DaysInARow} days in a row" : "";
        return new(
            Wording.Of(signal),
            finding.Value is { } value ? $"{Number(value)} {unit}" : "not known",
            $"{Wording.Of(relation)} {Number(threshold.Value)} {unit}{run}",
            MarginOf(finding, unit),
            Wording.Of(finding.Basis));
    }

    private static string MarginOf(SignalFinding finding, string unit)
    {
        var margin = finding.Margin switch
        {
            null => "not known",
            >= 0 and var past => $"past the limit by {Number(past)} {unit}",
            var missing => $"short of the limit by {Number(-missing.Value)} {unit}",
        };
        return finding.DaysInARow > 1
            ? $"{margin}; {DayWords.Count(finding.RunLength, "day", "days")} in a row so far"
            : margin;
    }

    private static RuleFact Of(CalendarFinding finding, LocalDate day)
    {
        var range = finding.From == finding.To
            ? DayWords.WithYear(finding.From)
            : $"{DayWords.WithYear(finding.From)} to {DayWords.WithYear(finding.To)}";
        var margin = finding.Truth switch
        {
            Truth.Unknown => "not known yet where it ends",
            _ when finding.MarginDays < 0 => $"begins in {DayWords.Count(-finding.MarginDays, "day", "days")}",
            _ => $"{DayWords.Count(finding.MarginDays, "day", "days")} left",
        };
        return new("date", DayWords.Of(day), range, margin, Wording.OfEvent(finding.Basis));
    }

    private static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
