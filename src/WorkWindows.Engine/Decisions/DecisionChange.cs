using System.Text.Json;
using NodaTime;
using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Decisions;

/// <summary>Whether a later decision says anything else than an earlier one of the days that both speak of.</summary>
public static class DecisionChange
{
    private static readonly string[] Truths = ["holds", "unknown"];

    /// <summary>
    /// Compares the states and, rule by rule, the days on which each rule holds or cannot be known. Days that have
    /// passed, and days that only the later decision has come to see, are no change.
    /// </summary>
    /// <param name="earlier">The earlier decision's content.</param>
    /// <param name="later">The later decision's content.</param>
    /// <returns>True also when the two have no day in common.</returns>
    public static bool Between(ReadOnlyMemory<byte> earlier, ReadOnlyMemory<byte> later)
    {
        using var before = JsonDocument.Parse(earlier);
        using var after = JsonDocument.Parse(later);
        var (decided, now) = (Days(before.RootElement), Days(after.RootElement));
        var (first, last) = (LocalDate.Max(decided.First, now.First), LocalDate.Min(decided.Last, now.Last));
        if (first > last || first != now.First)
            return true;
        var shared = DaySpan.Between(first, last);
        return States(before.RootElement, decided, shared) != States(after.RootElement, now, shared)
            || !Rules(before.RootElement, shared).SetEquals(Rules(after.RootElement, shared));
    }

    private static DaySpan Days(JsonElement decision) =>
        new(CanonicalJson.Date(decision.GetProperty("first")), decision.GetProperty("states").GetString()!.Length);

    private static string States(JsonElement decision, DaySpan days, DaySpan shared) =>
        decision.GetProperty("states").GetString()!.Substring(days.IndexOf(shared.First), shared.Count);

    /// <summary>Each rule's runs, cut off at the shared days; a rule that says nothing of them is left out.</summary>
    private static HashSet<string> Rules(JsonElement decision, DaySpan shared) =>
    [
        .. from rule in decision.GetProperty("rules").EnumerateArray()
           from truth in Truths
           from run in rule.GetProperty(truth).EnumerateArray()
           let ends = run.GetString()!.Split('/')
           let first = LocalDate.Max(CanonicalJson.Date(ends[0]), shared.First)
           let last = LocalDate.Min(CanonicalJson.Date(ends[1]), shared.Last)
           where first <= last
           select $"{rule.GetProperty("pack")} {rule.GetProperty("id")} {rule.GetProperty("effect")} {truth} {first:R}/{last:R}",
    ];
}
