using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using WorkWindows.Engine.Daylight;
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

    /// <summary>An offer that still waits to be sent must not arrive after what takes it back; its key is free again.</summary>
    private async Task DropAsync(Night night, NightPlan plan, CancellationToken cancellation)
    {
        if (plan.Dropped.Count == 0)
            return;
        var keys = plan.Dropped.SelectMany(key => new[] { key, key + Message.WebhookSuffix }).ToList();
        var waiting = await db.Messages
            .Where(message => keys.Contains(message.DedupeKey) && message.SentAt == null && message.DeadAt == null)
            .ToListAsync(cancellation);
        foreach (var message in waiting)
            message.Supersede(night.Now, "superseded: its days are not good any more");
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
        var oldest = night.Date.PlusDays(-CalendarLedger.DaysBack);
        var ledger = new CalendarLedger(
            await db.CalendarDays.Where(day => day.Last >= oldest).ToListAsync(cancellation), night.Now);
        foreach (var window in plan.Stopped)
            ledger.Cancel(window.PersonId, CalendarEntries.Key(window.TaskId, window.FirstDay));
        // A cancellation is told as such before what still stands takes its place in the feed.
        foreach (var draft in plan.Messages.Where(draft => draft.Calendar?.IsCancelled == true))
            Add(night, draft, [.. draft.Calendar!.Entries.Select(entry => ledger.Cancel(draft.To.Id, entry.Key)).OfType<CalendarDay>()]);
        foreach (var window in plan.Announced.Concat(plan.Extended.Select(grown => grown.Window)))
            ledger.Publish(window.PersonId, CalendarEntries.Of(tasks[window.TaskId].Task, new(window.FirstDay, window.LastDay)));
        ScheduledDays.Tell(night, await ShiftAsync(cancellation), ledger);
        db.CalendarDays.AddRange(ledger.Added);
        foreach (var draft in plan.Messages.Where(draft => draft.Calendar?.IsCancelled != true))
            Add(night, draft, [.. draft.Calendar?.Entries.Select(entry => ledger.Publish(draft.To.Id, entry)) ?? []]);
    }

    private void Add(Night night, NoticeDraft draft, IReadOnlyList<CalendarDay> days) => db.Messages.Add(Message.Of(
        draft, night.Now, mail.Value, days.Count == 0 ? null : CalendarFile.OfNotice(days, mail.Value)));

    private async Task<WorkShift> ShiftAsync(CancellationToken cancellation)
    {
        var organization = await db.Organizations.AsNoTracking().SingleAsync(cancellation);
        return new(organization.ShiftStart, organization.ShiftEnd);
    }
}
