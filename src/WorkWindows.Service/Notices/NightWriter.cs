using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using WorkWindows.Service.Notices.Calendars;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>Turns the plan of a night into rows. The caller saves them.</summary>
public sealed class NightWriter(WorkWindowsDb db, IOptions<MailOptions> mail)
{
    public async Task WriteAsync(Night night, NightPlan plan, CancellationToken cancellation)
    {
        await DropAsync(night, plan, cancellation);
        foreach (var (window, lastDay) in plan.Extended)
            window.LastDay = lastDay;
        foreach (var window in plan.Stopped)
            window.StoppedAt = night.Now;
        db.Announcements.AddRange(plan.Announced);
        db.ToldTopics.AddRange(plan.Topics.Select(topic => new ToldTopic
        {
            PersonId = topic.Person,
            Topic = topic.Topic,
            ToldAt = night.Now,
        }));
        await TellSeasonsAsync(night, plan, cancellation);
        await TellCalendarsAsync(night, plan, cancellation);
    }

    /// <summary>
    /// An offer that still waits to be sent must not arrive after what takes it back; its key is free again, also where
    /// it has left in another way, in which what is offered anew is told too.
    /// </summary>
    private async Task DropAsync(Night night, NightPlan plan, CancellationToken cancellation)
    {
        if (plan.Dropped.Count == 0)
            return;
        var keys = plan.Dropped.SelectMany(key => new[] { key, key + Message.WebhookSuffix }).ToList();
        foreach (var message in await db.Messages.Where(row => keys.Contains(row.DedupeKey)).ToListAsync(cancellation))
        {
            if (message is { SentAt: null, DeadAt: null })
                message.Supersede(night.Now, "superseded: its days are not good any more");
            else
                message.FreeKey();
        }
        // Before the messages that take their keys.
        await db.SaveChangesAsync(cancellation);
    }

    private async Task TellSeasonsAsync(Night night, NightPlan plan, CancellationToken cancellation)
    {
        var tasks = plan.SeasonEnds.Keys.Select(key => key.Task).ToList();
        var known = await db.SeasonEnds.Where(end => tasks.Contains(end.TaskId))
            .ToDictionaryAsync(end => (end.TaskId, end.PersonId), cancellation);
        foreach (var ((task, person), lastDay) in plan.SeasonEnds)
        {
            if (known.TryGetValue((task, person), out var end))
                (end.LastDay, end.ToldAt) = (lastDay, night.Now);
            else
                db.SeasonEnds.Add(new() { TaskId = task, PersonId = person, LastDay = lastDay, ToldAt = night.Now });
        }
    }

    private async Task TellCalendarsAsync(Night night, NightPlan plan, CancellationToken cancellation)
    {
        var tasks = night.Tasks.ToDictionary(task => task.Task.Id);
        var ledger = await LedgerAsync(night, cancellation);
        await TakeBackAsync(night, ledger, cancellation);
        foreach (var window in plan.Stopped)
            ledger.Cancel(window.PersonId, CalendarEntries.Key(window.TaskId, window.FirstDay));
        // A cancellation is told as such before what still stands takes its place in the feed.
        foreach (var draft in plan.Messages.Where(draft => draft.Calendar?.IsCancelled == true))
        {
            var cancelled = draft.Calendar!.Entries.Select(entry => ledger.Cancel(draft.To.Id, entry.Key));
            Add(night, draft, [.. cancelled.OfType<CalendarDay>()]);
        }
        foreach (var window in plan.Announced.Concat(plan.Extended.Select(grown => grown.Window)))
        {
            ledger.Publish(
                window.PersonId,
                CalendarEntries.Of(tasks[window.TaskId].Task, new(window.FirstDay, window.LastDay)));
        }
        ScheduledDays.Tell(night, ledger);
        db.CalendarDays.AddRange(ledger.Added);
        foreach (var draft in plan.Messages.Where(draft => draft.Calendar?.IsCancelled != true))
            Add(night, draft, [.. draft.Calendar?.Entries.Select(entry => ledger.Publish(draft.To.Id, entry)) ?? []]);
    }

    /// <summary>A scheduled day keeps its key however far it moves, so that no entry of one is too old.</summary>
    private async Task<CalendarLedger> LedgerAsync(Night night, CancellationToken cancellation)
    {
        var oldest = night.Date.PlusDays(-CalendarLedger.DaysBack);
        var days = await db.CalendarDays
            .Where(day => day.Last >= oldest || day.Key.EndsWith(CalendarEntries.ScheduledSuffix))
            .ToListAsync(cancellation);
        return new(days, night.Now);
    }

    /// <summary>A day to come of a task that is completed is not to be worked.</summary>
    private async Task TakeBackAsync(Night night, CalendarLedger ledger, CancellationToken cancellation)
    {
        var open = (await db.PlannedTasks.Where(task => task.CompletedOn == null).Select(task => task.Id)
            .ToListAsync(cancellation)).Select(id => $"{id:N}").ToHashSet();
        foreach (var day in ledger.Days.Where(day => day.First > night.Date && !open.Contains(day.Key.Split('-')[0])))
            ledger.Cancel(day.PersonId, day.Key);
    }

    private void Add(Night night, NoticeDraft draft, IReadOnlyList<CalendarDay> days) => db.Messages.Add(Message.Of(
        draft, night.Now, mail.Value, days.Count == 0 ? null : CalendarFile.OfNotice(days, mail.Value)));
}
