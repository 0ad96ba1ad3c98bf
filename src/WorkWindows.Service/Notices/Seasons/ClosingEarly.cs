using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Notices.Templates;

namespace WorkWindows.Service.Notices.Seasons;

/// <summary>Tells those who were told how long a season lasts, in one message, that it ends sooner.</summary>
internal static class ClosingEarly
{
    /// <summary>A prediction wanders by a day or two; common practice, no source.</summary>
    public const int DaysSooner = 3;

    public static void Plan(Night night, NightPlan plan)
    {
        var tasks = night.Tasks.Where(task => !task.Waits).ToDictionary(task => task.Task.Id);
        var sooner = night.SeasonEnds
            .Where(told => tasks.ContainsKey(told.TaskId) && !plan.SeasonEnds.ContainsKey((told.TaskId, told.PersonId)))
            .Select(told => (Told: told, Task: tasks[told.TaskId]))
            .Where(one => one.Told.LastDay >= one.Task.Today)
            .Select(one => (one.Told, one.Task, Edge: EdgeOf(one.Task, one.Told)))
            .Where(one => one.Edge is { } edge && edge.Day.PlusDays(-1 + DaysSooner) <= one.Told.LastDay)
            .Select(one => new End(one.Told, one.Task, one.Edge!.Value));
        foreach (var own in sooner.GroupBy(end => end.Told.PersonId))
        {
            var key = $"closing-early:{own.Key}:{night.Date:R}";
            var told = plan.Tell(night, own.Key, NoticeKinds.ClosingEarly, key, recipient => new(
                key, NoticeKinds.ClosingEarly, recipient, Notice(night, [.. own], recipient.Wishes.Scale), Calendar: null));
            if (!told.IsTold)
                continue;
            foreach (var end in own)
                plan.SeasonEnds[(end.Task.Task.Id, own.Key)] = end.LastDay;
        }
    }

    /// <summary>Of a season that was told ahead of its first day, the end is what comes after that day.</summary>
    private static SeasonEdge? EdgeOf(TaskTonight task, SeasonEnd told)
    {
        var opening = SeasonEdges.Opening(
            task.Evaluation, task.Today, Period.DaysBetween(task.Today, told.LastDay));
        return SeasonEdges.Next(task.Evaluation, opening?.Day ?? task.Today);
    }

    private static Notice Notice(Night night, End[] ends, TemperatureScale scale) => NoticeTemplates.Fill("closing-early", new
    {
        Places = NoticeWords.Places(ends.Select(end => end.Task)),
        Days = $"last day {DayWords.Of(ends.Min(end => end.LastDay))}",
        Tasks = ends.Select(end => new
        {
            end.Task.Title,
            Day = DayWords.Of(end.LastDay),
            Told = DayWords.Of(end.Told.LastDay),
            Rule = end.Edge.Rule.Title,
            Range = Reasons.Limits(
                Explanation.Of(end.Task.Evaluation, end.Edge.Day).Verdicts
                    .Single(verdict => verdict.Rule == end.Edge.Rule).Findings,
                scale),
            Sources = new[] { new Item(end.Edge.Rule.Because, Wording.Of(end.Edge.Rule.Source)) },
        }).ToArray(),
        Sender = night.Organization,
    });

    private sealed record End(SeasonEnd Told, TaskTonight Task, SeasonEdge Edge)
    {
        public LocalDate LastDay => Edge.Day.PlusDays(-1);
    }
}
