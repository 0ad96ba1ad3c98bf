using System.Collections.Immutable;
using System.Text.Json;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Decisions;

/// <summary>
/// The outcome of one evaluation of one task with the identity of everything that went into it. Its bytes are the
/// proof: evaluated again from the same rule packs and the same snapshot they come out the same.
/// </summary>
/// <param name="Content">UTF-8 JSON in a fixed form.</param>
/// <param name="Hash">SHA-256 of the content, lower-case hexadecimal.</param>
/// <param name="SnapshotHash">SHA-256 of the snapshot of the signals.</param>
/// <param name="States">One letter a day: O open, L limited, U unknown, C closed.</param>
public sealed record DecisionRecord(ImmutableArray<byte> Content, string Hash, string SnapshotHash, string States)
{
    /// <summary>Records what an evaluation says of the given days.</summary>
    /// <param name="evaluation">The evaluation; its span contains the days.</param>
    /// <param name="days">The days decided about.</param>
    /// <param name="snapshotHash">SHA-256 of the snapshot of the evaluation's signals.</param>
    public static DecisionRecord Of(TaskEvaluation evaluation, DaySpan days, string snapshotHash)
    {
        var states = string.Concat(Enumerable.Range(0, days.Count).Select(day => Letter(evaluation[days[day]])));
        var content = CanonicalJson.Write(json => Write(json, evaluation, days, snapshotHash, states));
        return new([.. content], CanonicalJson.Hash(content), snapshotHash, states);
    }

    /// <summary>SHA-256 of a snapshot's bytes, lower-case hexadecimal.</summary>
    public static string HashOf(ReadOnlySpan<byte> snapshot) => CanonicalJson.Hash(snapshot);

    /// <summary>Evaluates again what a stored decision decided.</summary>
    /// <inheritdoc cref="Evaluate"/>
    public static DecisionRecord Replay(
        ReadOnlyMemory<byte> content, ReadOnlyMemory<byte> snapshot, ImmutableArray<RulePack> packs) =>
        Of(Evaluate(content, snapshot, packs), StoredDecision.Of(content).Days, HashOf(snapshot.Span));

    /// <summary>The evaluation of what a stored decision was made from.</summary>
    /// <param name="content">The stored content.</param>
    /// <param name="snapshot">The stored snapshot.</param>
    /// <param name="packs">The packs that it names, found by their hash.</param>
    /// <exception cref="InvalidOperationException">
    /// The snapshot or a pack is not the one that it was made from.
    /// </exception>
    public static TaskEvaluation Evaluate(
        ReadOnlyMemory<byte> content, ReadOnlyMemory<byte> snapshot, ImmutableArray<RulePack> packs)
    {
        using var document = JsonDocument.Parse(content);
        var root = document.RootElement;
        var snapshotHash = root.GetProperty("snapshot").GetString()!;
        if (CanonicalJson.Hash(snapshot.Span) != snapshotHash)
            throw new InvalidOperationException(
                $"The snapshot is not {snapshotHash}, which the decision was made from.");
        var named = root.GetProperty("packs").EnumerateArray().Select(pack => pack.GetProperty("hash").GetString()!);
        var ordered = named.Select(hash => packs.FirstOrDefault(pack => pack.Hash == hash)
            ?? throw new InvalidOperationException(
                $"The rule pack {hash}, which the decision was made from, is missing."));
        return new PointRules([.. ordered], Snapshot.Read(snapshot)).Evaluate(Facts(root.GetProperty("task")));
    }

    private static void Write(
        Utf8JsonWriter json, TaskEvaluation evaluation, DaySpan days, string snapshotHash, string states)
    {
        json.WriteStartObject();
        json.WriteString("engine", EngineVersion.Current);
        Write(json, evaluation.Facts);
        json.WriteStartArray("packs");
        foreach (var pack in evaluation.Packs)
        {
            json.WriteStartObject();
            json.WriteString("id", pack.Id);
            json.WriteString("version", pack.Version);
            json.WriteString("hash", pack.Hash);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteString("snapshot", snapshotHash);
        json.WriteString("first", CanonicalJson.Text(days.First));
        json.WriteString("states", states);
        json.WriteStartArray("rules");
        foreach (var rule in evaluation.Rules)
            Write(json, rule, evaluation, days);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, TaskFacts facts)
    {
        json.WriteStartObject("task");
        json.WriteString("id", facts.TaskId);
        json.WriteString("practice", facts.Practice.Id);
        json.WriteString("state", facts.State);
        json.WriteString("county", facts.CountyFips);
        if (facts.SpeciesGroups is { } species)
            json.Strings("species", species.Select(group => group.ToString()));
        json.Strings("flags", facts.SiteFlags.Select(flag => flag.ToString()));
        if (facts.Organization is { } organization)
            json.WriteString("organization", organization);
        if (facts.Place is { } place)
        {
            json.WriteNumber("latitudeDeg", place.LatitudeDeg);
            json.WriteNumber("longitudeDeg", place.LongitudeDeg);
        }
        if (!facts.Overrides.IsEmpty)
            WriteOverrides(json, facts);
        json.WriteEndObject();
    }

    private static void WriteOverrides(Utf8JsonWriter json, TaskFacts facts)
    {
        json.WriteStartArray("overrides");
        foreach (var exception in facts.Overrides)
        {
            json.WriteStartObject();
            json.WriteString("rule", exception.RuleId);
            json.WriteString("first", CanonicalJson.Text(exception.First));
            json.WriteString("last", CanonicalJson.Text(exception.Last));
            json.WriteString("by", exception.By);
            json.WriteString("reason", exception.Reason);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, RuleDays rule, TaskEvaluation evaluation, DaySpan days)
    {
        var offset = evaluation.Span.IndexOf(days.First);
        var truths = Enumerable.Range(offset, days.Count).Select(rule.On).ToArray();
        json.WriteStartObject();
        json.WriteString("pack", rule.Pack.Id);
        json.WriteString("id", rule.Rule.Id);
        json.WriteString("effect", rule.Rule.Effect.ToString());
        json.Strings("holds", Runs(Truth.Holds));
        json.Strings("unknown", Runs(Truth.Unknown));
        json.WriteEndObject();

        IEnumerable<string> Runs(Truth truth) => DayBits.Where(days.Count, day => truths[day] == truth).Runs()
            .Select(run => $"{CanonicalJson.Text(days[run.First])}/{CanonicalJson.Text(days[run.Last])}");
    }

    private static TaskFacts Facts(JsonElement task) => new(
        task.GetProperty("id").GetString()!,
        PracticeCatalogue.Find(task.GetProperty("practice").GetString()!)
            ?? throw new InvalidOperationException(
                $"The practice {task.GetProperty("practice")} is not in the catalogue."),
        task.GetProperty("state").GetString()!,
        task.GetProperty("county").GetString()!,
        task.TryGetProperty("species", out var species)
            ? [.. species.EnumerateArray().Select(group => Enum.Parse<SpeciesGroup>(group.GetString()!))]
            : null,
        [.. task.GetProperty("flags").EnumerateArray().Select(flag => Enum.Parse<SiteFlag>(flag.GetString()!))])
    {
        Organization = task.TryGetProperty("organization", out var organization) ? organization.GetString() : null,
        Place = task.TryGetProperty("latitudeDeg", out var latitude)
            ? new(latitude.GetDouble(), task.GetProperty("longitudeDeg").GetDouble())
            : null,
        Overrides = task.TryGetProperty("overrides", out var overrides)
            ? [.. overrides.EnumerateArray().Select(Override)]
            : [],
    };

    private static RuleOverride Override(JsonElement exception) => new(
        exception.GetProperty("rule").GetString()!,
        CanonicalJson.Date(exception.GetProperty("first")),
        CanonicalJson.Date(exception.GetProperty("last")),
        exception.GetProperty("by").GetString()!,
        exception.GetProperty("reason").GetString()!);

    private static char Letter(DayState state) => state switch
    {
        DayState.Open => 'O',
        DayState.Limited => 'L',
        DayState.Unknown => 'U',
        DayState.Closed => 'C',
    };
}
