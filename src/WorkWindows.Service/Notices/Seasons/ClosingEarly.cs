using NodaTime;
using WorkWindows.Engine.Chances;
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
            .Select(one => (one.Told, one.Task, From: From(one.Task, one.Told)))
            .Select(one => (one.Told, one.Task, one.From, Edge: SeasonEdges.Next(one.Task.Evaluation, one.From)))
            .Where(one => one.Edge is { } edge && edge.Day.PlusDays(-1 + DaysSooner) <= one.Told.LastDay)
            .Select(one => new End(one.Told, one.Task, one.From, one.Edge!.Value));
        foreach (var own in sooner.GroupBy(end => end.Told.PersonId))
        {
            var key = $"closing-early:{own.Key}:{night.Date:R}";
            var told = plan.Tell(night, own.Key, NoticeKinds.ClosingEarly, key, recipient => new(
                key, NoticeKinds.ClosingEarly, recipient, Notice(night, [.. own], recipient.Wishes.Scale),
                Calendar: null));
            if (!told.IsTold)
                continue;
            foreach (var end in own)
                plan.SeasonEnds[(end.Task.Task.Id, own.Key)] = end.LastDay;
        }
    }

    /// <summary>Of a season that was told ahead of its first day, the end is what comes after that day.</summary>
    private static LocalDate From(TaskTonight task, SeasonEnd told) => SeasonEdges.Opening(
        task.Evaluation, task.Today, Period.DaysBetween(task.Today, told.LastDay))?.Day ?? task.Today;

    private static Notice Notice(Night night, End[] ends, TemperatureScale scale) =>
        NoticeTemplates.Fill("closing-early", new
        {
            Places = NoticeWords.Places(ends.Select(end => end.Task)),
            Days = $"last day {MailDays.Of(ends.Min(end => end.LastDay))}",
            BreakDays = TaskChances.LongestBreakDays,
            Tasks = ends.Select(end => new
            {
                end.Task.Title,
                Day = MailDays.Of(end.LastDay),
                Told = MailDays.Of(end.Told.LastDay),
                Rule = end.Edge.Rule.Title,
                Range = Reasons.Limits(
                    Explanation.Of(end.Task.Evaluation, end.Edge.Day).Verdicts
                        .Single(verdict => verdict.Rule == end.Edge.Rule).Findings,
                    scale),
                Breaks = Reasons.Breaks(end.Task.Evaluation, end.From),
                Sources = new[] { new Item(end.Edge.Rule.Because, Wording.Of(end.Edge.Rule.Source)) },
            }).ToArray(),
            Sender = night.Organization,
        });

    /// <param name="Told">What was told.</param>
    /// <param name="Task">The task.</param>
    /// <param name="From">A day of the season.</param>
    /// <param name="Edge">Its end.</param>
    private sealed record End(SeasonEnd Told, TaskTonight Task, LocalDate From, SeasonEdge Edge)
    {
        public LocalDate LastDay => Edge.Day.PlusDays(-1);
    }
}
