using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Decisions;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Rules.Reading;
using WorkWindows.Engine.Signals;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Windows;

/// <summary>Keeps decisions with everything needed to make them again.</summary>
public sealed class DecisionStore(WorkWindowsDb db, RulePacks shipped, IClock clock)
{
    /// <summary>
    /// Adds a decision for each task of whose days something else is to be said than was last decided; the caller
    /// saves. Adding again without any change adds nothing.
    /// </summary>
    /// <exception cref="ClockSetBackException">A decision was made later than the clock says it is.</exception>
    public async Task<IReadOnlyList<Decision>> AddChangedAsync(
        IReadOnlyList<EvaluatedTask> tasks, DaySpan days, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var last = await LastAsync([.. tasks.Select(task => task.Task.Id)], cancellation);
        if (last.Values.Select(decision => decision.EvaluatedAt).DefaultIfEmpty(now).Max() is var latest && latest > now)
            throw new ClockSetBackException(now, latest);

        var snapshots = new Dictionary<SignalSet, string>(ReferenceEqualityComparer.Instance);
        var added = new List<Decision>();
        foreach (var (task, evaluation) in tasks)
        {
            if (!snapshots.TryGetValue(evaluation.Signals, out var snapshotHash))
                snapshots[evaluation.Signals] = snapshotHash = DecisionRecord.HashOf(
                    Snapshot.Write(evaluation.Signals));
            var record = DecisionRecord.Of(evaluation, days, snapshotHash);
            var content = record.Content.ToArray();
            if (last.GetValueOrDefault(task.Id) is { } before && !DecisionChange.Between(before.Content, content))
                continue;
            added.Add(new()
            {
                TaskId = task.Id,
                EvaluatedAt = now,
                FirstDay = days.First,
                LastDay = days.Last,
                Hash = record.Hash,
                Content = content,
                SnapshotHash = snapshotHash,
                PackHashes = [.. evaluation.Packs.Select(pack => pack.Hash)],
            });
        }
        await KeepSnapshotsAsync(
            snapshots.Where(pair => added.Exists(decision => decision.SnapshotHash == pair.Value)), cancellation);
        if (added.Count > 0)
            await KeepPacksAsync(tasks.SelectMany(task => task.Evaluation.Packs).Distinct(), cancellation);
        db.Decisions.AddRange(added);
        return added;
    }

    /// <summary>Evaluates a stored decision again from its own snapshot and rule packs.</summary>
    /// <returns>
    /// What the same inputs give now; the hash is that of the decision unless something was tampered with.
    /// </returns>
    public async Task<DecisionRecord> ReplayAsync(Decision decision, CancellationToken cancellation)
    {
        var snapshot = await db.WeatherSnapshots.AsNoTracking()
            .SingleAsync(kept => kept.Hash == decision.SnapshotHash, cancellation);
        return DecisionRecord.Replay(
            decision.Content, snapshot.Content, await PacksAsync(decision, cancellation));
    }

    /// <summary>Evaluates a stored decision again as <see cref="ReplayAsync"/> does, and says why where that fails.</summary>
    public async Task<DecisionInputs> InputsAsync(Decision decision, CancellationToken cancellation)
    {
        var snapshot = await db.WeatherSnapshots.AsNoTracking()
            .SingleOrDefaultAsync(kept => kept.Hash == decision.SnapshotHash, cancellation);
        if (snapshot is null)
            return new(null, $"The snapshot {decision.SnapshotHash}, which the decision was made from, is missing.");
        try
        {
            return new(DecisionRecord.Evaluate(
                decision.Content, snapshot.Content, await PacksAsync(decision, cancellation)), null);
        }
        catch (Exception fault) when (fault is InvalidOperationException or PackException)
        {
            return new(null, fault.Message);
        }
    }

    /// <returns>The rule packs that a decision was made by.</returns>
    public async Task<ImmutableArray<RulePack>> PacksAsync(Decision decision, CancellationToken cancellation)
    {
        var texts = await db.StoredPacks.AsNoTracking()
            .Where(pack => decision.PackHashes.Contains(pack.Hash)).Select(pack => pack.Text).ToListAsync(cancellation);
        return [.. texts.Select(RulePackReader.Read)];
    }

    /// <summary>The latest decision of each task.</summary>
    private async Task<Dictionary<Guid, Decision>> LastAsync(List<Guid> tasks, CancellationToken cancellation) =>
        await db.Decisions.AsNoTracking().Where(decision => tasks.Contains(decision.TaskId))
            .GroupBy(decision => decision.TaskId)
            .Select(group => group.OrderByDescending(decision => decision.EvaluatedAt).First())
            .ToDictionaryAsync(decision => decision.TaskId, cancellation);

    private async Task KeepSnapshotsAsync(
        IEnumerable<KeyValuePair<SignalSet, string>> snapshots, CancellationToken cancellation)
    {
        var bySignals = snapshots.DistinctBy(pair => pair.Value).ToDictionary(pair => pair.Value, pair => pair.Key);
        var hashes = bySignals.Keys.ToList();
        var kept = await db.WeatherSnapshots.Where(snapshot => hashes.Contains(snapshot.Hash))
            .Select(snapshot => snapshot.Hash).ToListAsync(cancellation);
        foreach (var (hash, signals) in bySignals.Where(pair => !kept.Contains(pair.Key)))
            db.WeatherSnapshots.Add(new() { Hash = hash, Content = Snapshot.Write(signals) });
    }

    /// <summary>Texts of organizations are kept when they are handed in; those of the service from here on.</summary>
    private async Task KeepPacksAsync(IEnumerable<RulePack> relied, CancellationToken cancellation)
    {
        var kept = await db.StoredPacks.Select(pack => pack.Hash).ToListAsync(cancellation);
        foreach (var pack in relied.Where(pack => !kept.Contains(pack.Hash)))
        {
            db.StoredPacks.Add(new()
            {
                Hash = pack.Hash,
                PackId = pack.Id,
                Version = pack.Version,
                Text = shipped.Texts[pack.Hash],
            });
        }
    }
}

/// <param name="Evaluation">What the stored inputs give; null when they cannot be evaluated.</param>
/// <param name="Fault">Why they cannot, or null.</param>
public sealed record DecisionInputs(TaskEvaluation? Evaluation, string? Fault);
