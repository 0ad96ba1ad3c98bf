using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Decisions;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Signals;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Browser.Tests.Site;

/// <summary>What the night before decided about the hinge cut, when Sunday was forecast to be calm.</summary>
internal static class ScenarioDecision
{
    private const double CalmMps = 2;

    public static async Task AddAsync(IServiceProvider services, Guid organization, Guid task)
    {
        await using var scope = services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(organization);
        var db = scope.ServiceProvider.GetRequiredService<WorkWindowsDb>();
        var days = new DaySpan(new(2026, 2, 3), 365);
        var evaluated = (await scope.ServiceProvider.GetRequiredService<TaskEvaluator>()
            .EvaluateAsync(db.PlannedTasks.Where(row => row.Id == task), days, CancellationToken.None)).Single().Evaluation;

        var calm = Forecast(Forecast(evaluated.Signals, SignalKind.WindMps), SignalKind.GustMps);
        var snapshot = Snapshot.Write(calm);
        var record = DecisionRecord.Of(
            new PointRules(evaluated.Packs, calm).Evaluate(evaluated.Facts), days, DecisionRecord.HashOf(snapshot));
        db.Add(new WeatherSnapshot { Hash = record.SnapshotHash, Content = snapshot });
        db.Add(new Decision
        {
            TaskId = task,
            EvaluatedAt = Scenario.Now - Duration.FromHours(6),
            FirstDay = days.First,
            LastDay = days.Last,
            // A hash that the pages can be searched for.
            Hash = new string('c', 64),
            Content = [.. record.Content],
            SnapshotHash = record.SnapshotHash,
            PackHashes = [.. evaluated.Packs.Select(pack => pack.Hash)],
        });
        await db.SaveChangesAsync();
    }

    private static SignalSet Forecast(SignalSet signals, SignalKind kind)
    {
        var sunday = signals.Span.IndexOf(new(2026, 2, 8));
        var signal = signals[kind]!;
        return signals.With(new Signal(kind, signals.Span, signal.Values.SetItem(sunday, CalmMps), signal.Bases));
    }
}
