using System.Text.Json;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Engine.Decisions;

/// <summary>A decision read back from its content.</summary>
public sealed class StoredDecision
{
    private readonly string states;
    private readonly ILookup<string, (Truth Truth, LocalDate First, LocalDate Last)> rules;
    private readonly Dictionary<string, (string Version, string Hash)> packs;
    private readonly HashSet<(string Rule, LocalDate Last, string By)> exceptions;

    private StoredDecision(JsonElement content)
    {
        Engine = content.GetProperty("engine").GetString()!;
        states = content.GetProperty("states").GetString()!;
        Days = new(CanonicalJson.Date(content.GetProperty("first")), states.Length);
        RuleIds = [.. content.GetProperty("rules").EnumerateArray().Select(
            rule => rule.GetProperty("id").GetString()!)];
        rules = content.GetProperty("rules").EnumerateArray()
            .SelectMany(rule => Runs(rule, "holds", Truth.Holds).Concat(Runs(rule, "unknown", Truth.Unknown)))
            .ToLookup(run => run.Id, run => (run.Truth, run.First, run.Last));
        packs = content.GetProperty("packs").EnumerateArray().ToDictionary(
            pack => pack.GetProperty("id").GetString()!,
            pack => (pack.GetProperty("version").GetString()!, pack.GetProperty("hash").GetString()!));
        exceptions = content.GetProperty("task").TryGetProperty("overrides", out var overrides)
            ? [.. overrides.EnumerateArray().Select(e => (
                e.GetProperty("rule").GetString()!, CanonicalJson.Date(e.GetProperty("last")),
                e.GetProperty("by").GetString()!))]
            : [];
    }

    /// <summary>The version of the engine that made it.</summary>
    public string Engine { get; }

    /// <summary>The days decided about.</summary>
    public DaySpan Days { get; }

    /// <summary>The rules that spoke of the task, in the order of the packs; an id may stand more than once.</summary>
    public IReadOnlyList<string> RuleIds { get; }

    /// <param name="content">The bytes as they were stored.</param>
    /// <exception cref="JsonException">The bytes are not a decision.</exception>
    public static StoredDecision Of(ReadOnlyMemory<byte> content)
    {
        using var document = JsonDocument.Parse(content);
        return Of(document.RootElement);
    }

    internal static StoredDecision Of(JsonElement content) => new(content);

    /// <summary>The state that was decided.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Nothing was decided about the day.</exception>
    public DayState StateOn(LocalDate day) => states[Days.IndexOf(day)] switch
    {
        'O' => DayState.Open,
        'L' => DayState.Limited,
        'U' => DayState.Unknown,
        'C' => DayState.Closed,
        var letter => throw new InvalidOperationException($"The decision has the state {letter}."),
    };

    /// <summary>What the rules of an id said of a day together.</summary>
    public Truth TruthOf(string ruleId, LocalDate day) =>
        Worst(rules[ruleId].Where(run => run.First <= day && day <= run.Last).Select(run => run.Truth));

    /// <summary>What rules of one id say together.</summary>
    internal static Truth Worst(IEnumerable<Truth> truths)
    {
        var worst = Truth.Fails;
        foreach (var truth in truths)
        {
            if (truth == Truth.Holds)
                return Truth.Holds;
            if (truth == Truth.Unknown)
                worst = Truth.Unknown;
        }
        return worst;
    }

    /// <summary>The rule packs and exceptions that are others now, a sentence each.</summary>
    internal IEnumerable<string> OthersThan(TaskEvaluation now)
    {
        foreach (var pack in now.Packs.Where(pack => !packs.ContainsKey(pack.Id)))
            yield return $"The rule pack {pack.Title} ({pack.Version}) is new.";
        foreach (var pack in now.Packs.Where(pack => packs.TryGetValue(pack.Id, out var was) && was.Hash != pack.Hash))
            yield return $"The rule pack {pack.Title} changed from {packs[pack.Id].Version} to {pack.Version}.";
        foreach (var id in packs.Keys.Except(now.Packs.Select(pack => pack.Id)))
            yield return $"The rule pack {id} is gone.";
        var titles = now.Packs.SelectMany(pack => pack.Rules).DistinctBy(rule => rule.Id)
            .ToDictionary(rule => rule.Id, rule => rule.Title);
        var present = now.Facts.Overrides.Select(e => (Rule: e.RuleId, e.Last, e.By)).ToHashSet();
        foreach (var made in present.Except(exceptions))
            yield return $"There is a new exception: {Sentence(made)}.";
        foreach (var ended in exceptions.Except(present))
            yield return $"An exception is gone: {Sentence(ended)}.";

        // A rule that no pack has any more is known by its key alone.
        string Sentence((string Rule, LocalDate Last, string By) e) =>
            $"{titles.GetValueOrDefault(e.Rule, e.Rule)}, by {e.By}, until {Wording.Of(e.Last)}";
    }

    private static IEnumerable<(string Id, Truth Truth, LocalDate First, LocalDate Last)> Runs(
        JsonElement rule, string name, Truth truth) =>
        from run in rule.GetProperty(name).EnumerateArray()
        let ends = run.GetString()!.Split('/')
        select (rule.GetProperty("id").GetString()!, truth, CanonicalJson.Date(ends[0]), CanonicalJson.Date(ends[1]));
}
