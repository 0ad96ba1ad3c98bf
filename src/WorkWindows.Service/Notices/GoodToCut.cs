using System.Collections.Immutable;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Notices.Seasons;
using WorkWindows.Service.Notices.Calendars;

namespace WorkWindows.Service.Notices;

/// <summary>Tells each landowner, in one message, of the workable days of the coming week that are news.</summary>
internal static class GoodToCut
{
    public static void Plan(Night night, NightPlan plan)
    {
        var standing = plan.Standing(night);
        foreach (var owned in night.Tasks.Where(task => task.Task.LandownerId is not null)
            .GroupBy(task => task.Task.LandownerId!.Value).Where(owned => !night.SeenInPart.Contains(owned.Key)))
        {
            var news = owned.Select(task => News(plan, standing, task, owned.Key)).Where(news => !news.Runs.IsEmpty)
                .ToImmutableArray();
            if (!news.IsEmpty)
                Tell(night, plan, owned.Key, news);
        }
    }

    /// <summary>A run that touches an announced one has been told already: it only grows.</summary>
    private static TaskNews News(
        NightPlan plan, IReadOnlyList<Announcement> standing, TaskTonight task, Guid landowner)
    {
        var told = standing.Where(window => window.TaskId == task.Task.Id && window.PersonId == landowner).ToList();
        var runs = ImmutableArray.CreateBuilder<Window>();
        foreach (var run in task.WorkableRuns())
        {
            var touching = told.Where(window =>
                window.FirstDay <= run.Last.PlusDays(1) && window.LastDay >= run.First.PlusDays(-1)).ToList();
            if (touching.Count == 0)
                runs.Add(run);
            else if (touching.MaxBy(window => window.LastDay)! is var last && last.LastDay < run.Last)
                plan.Extended.Add((last, run.Last));
        }
        return new(task, runs.ToImmutable());
    }

    private static void Tell(Night night, NightPlan plan, Guid landowner, ImmutableArray<TaskNews> news)
    {
        var key = $"good-to-cut:{landowner}:{night.Date:R}";
        var told = plan.Tell(night, landowner, NoticeKinds.GoodToCut, key, recipient => new(
            key, NoticeKinds.GoodToCut, recipient, GoodToCutNotice.Of(night, news, recipient.Wishes.Scale),
            new(IsCancelled: false,
                [.. news.SelectMany(one => one.Runs.Select(run => CalendarEntries.Of(one.Task.Task, run)))])));
        if (!told.IsTold)
            return;
        foreach (var (task, runs) in news)
        {
            if (SeasonEdges.Next(task.Evaluation, runs[^1].Last) is { } end)
                plan.SeasonEnds[(task.Task.Id, landowner)] = end.Day.PlusDays(-1);
        }
        plan.Announced.AddRange(news.SelectMany(one => one.Runs.Select(run => new Announcement
        {
            TaskId = one.Task.Task.Id,
            PersonId = landowner,
            FirstDay = run.First,
            LastDay = run.Last,
            MessageKey = told.MessageKey,
            AnnouncedAt = night.Now,
        })));
    }
}

/// <summary>The runs of workable days of a task that its landowner has not been told of.</summary>
internal sealed record TaskNews(TaskTonight Task, ImmutableArray<Window> Runs);
