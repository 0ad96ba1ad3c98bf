using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Commands;

/// <summary>What one rule says of a day, in plain words.</summary>
/// <param name="Rule">The rule's id.</param>
/// <param name="Pack">The pack's key and version.</param>
/// <param name="Effect">What it does.</param>
/// <param name="Title">What it says.</param>
/// <param name="Because">Why.</param>
/// <param name="Measure">What to do, where it asks for something.</param>
/// <param name="Doubts">What makes its answer uncertain, a sentence each.</param>
/// <param name="Findings">Its comparisons: value, limit, margin and basis of each.</param>
/// <param name="LetsGoOn">The first later day on which it surely says nothing, or null.</param>
/// <param name="Lifting">What takes away what it would say, or null.</param>
/// <param name="Authority">How binding it is.</param>
/// <param name="Source">Where it is stated.</param>
/// <param name="Address">Where that can be read, or null.</param>
internal sealed record ExplainedRule(
    string Rule, string Pack, string Effect, string Title, string Because, string? Measure,
    IReadOnlyList<string> Doubts, IReadOnlyList<FindingWords> Findings, LocalDate? LetsGoOn, Lifting? Lifting,
    string Authority, string Source, string? Address)
{
    public static ExplainedRule Of(RuleVerdict verdict, LocalDate day)
    {
        var reason = RuleReason.Of(verdict, day);
        return new(
            verdict.Rule.Id, $"{verdict.Pack.Id} {verdict.Pack.Version}", reason.Effect, reason.Title, reason.Because,
            reason.Measure, reason.Doubts, [.. verdict.Findings.Select(Wording.Parts)], verdict.LetsGoOn,
            verdict.Lifting, reason.Authority, reason.Source, reason.Address);
    }

    public static string InALine(FindingWords finding) => string.Join(", ", new[]
    {
        $"{finding.What} {finding.Value} ({finding.Basis})", $"limit: {finding.Limit}", finding.Margin,
    }.Where(part => part.Length > 0));

    public void Write(TextWriter output)
    {
        output.WriteLine($"  {Title}: {Effect} ({Rule}, pack {Pack})");
        output.WriteLine($"    {Because}");
        if (Measure is not null)
            output.WriteLine($"    Measure: {Measure}");
        foreach (var doubt in Doubts)
            output.WriteLine($"    {doubt}");
        foreach (var finding in Findings)
            output.WriteLine($"    {InALine(finding)}");
        if (Lifting is { } lifting)
            output.WriteLine($"    Lifted by {lifting.By}: {lifting.Reason}");
        output.WriteLine(LetsGoOn is { } date
            ? $"    Lets go on {DayWords.WithYear(date)}"
            : "    Nothing known says when it lets go");
        output.WriteLine($"    {Authority}; {Source}{(Address is null ? "" : $", {Address}")}");
    }
}
