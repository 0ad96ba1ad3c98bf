using WorkWindows.Engine;
using WorkWindows.Engine.Decisions;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Review;

/// <summary>Says whether stored inputs still give what was decided, and in words what differs.</summary>
internal static class Replays
{
    public static Replay Of(Decision decision, DecisionInputs inputs)
    {
        var differences = new List<string>();
        if (DecisionRecord.HashOf(decision.Content) is var actual && actual != decision.Hash)
            differences.Add($"The stored decision has the hash {actual}, not the one that was noted when it was made.");
        if (inputs.Evaluation is not { } again)
            return new(null, [.. differences, inputs.Fault!]);
        var stored = StoredDecision.Of(decision.Content);
        var record = DecisionRecord.Of(again, stored.Days, decision.SnapshotHash);
        if (record.Content.AsSpan().SequenceEqual(decision.Content))
            return new(record.Hash, differences);

        if (stored.Engine != EngineVersion.Current)
            differences.Add($"It was made by version {stored.Engine} of the evaluation; this is {EngineVersion.Current}.");
        var difference = DecisionDifference.Between(decision.Content, again.Signals, again, stored.Days);
        differences.AddRange(difference.Days.Select(Wording.Of));
        differences.AddRange(Wording.Causes(difference, TitlesOf(again)));
        if (differences.Count == 0)
            differences.Add("The states are the same, but what the decision says of single rules is not.");
        return new(record.Hash, differences);
    }

    /// <summary>A rule's title by its id; the id where no evaluation has the rule.</summary>
    public static Func<string, string> TitlesOf(params TaskEvaluation[] evaluations)
    {
        var titles = evaluations.SelectMany(one => one.Packs).SelectMany(pack => pack.Rules)
            .DistinctBy(rule => rule.Id).ToDictionary(rule => rule.Id, rule => rule.Title);
        return id => titles.GetValueOrDefault(id, id);
    }
}
