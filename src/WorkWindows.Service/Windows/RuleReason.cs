using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Service.Windows;

/// <summary>What one rule says of a day, as the page of the day tells it.</summary>
/// <param name="Id">The rule's id.</param>
/// <param name="Title">The rule.</param>
/// <param name="Effect">What it does.</param>
/// <param name="Because">Why.</param>
/// <param name="Measure">What to do, where it asks for something.</param>
/// <param name="Doubts">What makes its answer uncertain, a sentence each.</param>
/// <param name="Facts">Its comparisons.</param>
/// <param name="Authority">How binding it is.</param>
/// <param name="Source">Where it is stated.</param>
/// <param name="Address">Where that can be read, if it is on the web.</param>
/// <param name="LetsGo">
/// When it says nothing any more, in a few words; null for a rule that closes and limits nothing.
/// </param>
/// <param name="Lifted">What takes away what it would say, in a sentence; null when nothing does.</param>
/// <param name="MayBeExcepted">It stands, and a person can make an exception to it.</param>
public sealed record RuleReason(
    string Id, string Title, string Effect, string Because, string? Measure, IReadOnlyList<string> Doubts,
    IReadOnlyList<FindingWords> Facts, string Authority, string Source, string? Address,
    string? LetsGo, string? Lifted, bool MayBeExcepted)
{
    /// <summary>Nobody knows whether it holds.</summary>
    public bool InDoubt { get; private init; }

    /// <summary>Its comparisons in a line.</summary>
    public string Line => Facts.Count == 0
        ? string.Join(' ', Doubts)
        : string.Join("; ", Facts.Select(fact => $"{fact.What} {fact.Value}, limit: {fact.Limit}"));

    private const int DaysInAYear = 365;
    private const string NoSource = "common practice, no source";

    public static RuleReason Of(RuleVerdict verdict, LocalDate day)
    {
        var rule = verdict.Rule;
        return new(
            rule.Id, rule.Title, Wording.Of(rule.Effect), rule.Because, rule.Measure, [.. DoubtsOf(verdict, day)],
            [.. verdict.Findings.Where(finding => !IsEveryDay(finding)).Select(Wording.Parts)],
            Wording.Of(rule.Authority), Wording.Of(SaidOnce(rule.Source)), WebAddress(rule.Source.Address),
            LetsGoOf(verdict), Wording.Lifted(verdict), verdict.Spoke && rule.MayBeExcepted)
        {
            InDoubt = verdict.Truth == Truth.Unknown,
        };
    }

    private static IEnumerable<string> DoubtsOf(RuleVerdict verdict, LocalDate day)
    {
        if (verdict.InventoryMissing)
            yield return "The parcel has no stand inventory, so nobody knows whether its trees are meant.";
        else if (verdict.ScopeInDoubt)
            yield return $"Nobody has said {Wording.Doubted(verdict)}, so nobody knows whether it is meant.";
        else if (verdict.Truth == Truth.Unknown)
            yield return "A value that it needs is not known.";
        if (verdict.OutsideValidYears(day))
            yield return $"OUT OF DATE: its source speaks of {YearsOf(verdict.Rule.Valid)}, not of {day.Year}. Ask before you rely on it.";
    }

    internal static string YearsOf(ValidYears valid) => (valid.From, valid.To) switch
    {
        ({ } from, { } to) => from == to ? $"{from}" : $"{from} to {to}",
        ({ } from, null) => $"{from} and later",
        (null, { } to) => $"years to {to}",
        (null, null) => "any year",
    };

    private static string? LetsGoOf(RuleVerdict verdict) =>
        !verdict.Spoke || verdict.Rule.Effect is not (Engine.Rules.Effect.Closes or Engine.Rules.Effect.Limits) ? null
        : verdict.LetsGoOn is { } date ? $"Lets go on {DayWords.WithYear(date)}."
        : "Nothing that is known yet says when it lets go.";

    private static bool IsEveryDay(Finding finding) =>
        finding is CalendarFinding range && Period.DaysBetween(range.From, range.To.PlusDays(1)) >= DaysInAYear;

    /// <summary>The authority class stands beside it.</summary>
    private static RuleSource SaidOnce(RuleSource source) =>
        source.Title == NoSource ? source with { Title = "no published source" } : source;

    internal static string? WebAddress(string? address) =>
        Uri.TryCreate(address, UriKind.Absolute, out var uri) && uri.Scheme is "https" or "http" ? address : null;
}
