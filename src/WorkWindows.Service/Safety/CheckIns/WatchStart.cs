using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Safety.Checklists;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>Begins watches.</summary>
public sealed class WatchStart(WorkWindowsDb db, ChecklistReader checklists, PromptLook look, IClock clock)
{
    /// <summary>
    /// A crew begins only what is released. One that says that it is on the site already is watched all the same: what
    /// is not signed must not leave anybody unlooked for.
    /// </summary>
    /// <param name="taskId">The task that the crew is at.</param>
    /// <param name="form">What is wanted.</param>
    /// <param name="by">Who begins it.</param>
    /// <param name="cancellation">Ends the queries; nothing is stored then.</param>
    public async Task<Change<CrewWatch>> StartAsync(
        Guid taskId, WatchForm form, Signer by, CancellationToken cancellation)
    {
        if (await checklists.ReadAsync(taskId, day: null, cancellation) is not { } list)
            return Change.NotFound<CrewWatch>();
        var faults = new FieldFaults();
        var fields = form.Check(faults);
        var people = await PeopleAsync(fields, cancellation);
        Check(fields, people, faults);
        if (faults.Any)
            return Change.Refused<CrewWatch>(faults);
        var alone = fields.PeopleOnSite == 1 && CompanyRules.Forbidding(list.Explanation) is [var law, ..] ? law : null;
        if (alone is not null && form.OnSite is not true)
            return CompanyRules.Refuse<CrewWatch>(alone, "peopleOnSite");
        if (!list.Release.IsReleased && form.OnSite is not true)
            return NotReleased(list);

        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        // Whoever begins another watch of the task waits here and then finds this one.
        await db.PlannedTasks.FromSql($"select * from planned_tasks where id = {taskId} for update").AsNoTracking()
            .ToListAsync(cancellation);
        if (await db.CrewWatches.AnyAsync(row => row.TaskId == taskId && row.EndedAt == null, cancellation))
            return Change.Conflict<CrewWatch>("A watch of this task is on already; use that one, or end it first.");
        var watch = New(list, fields, alone, by, clock.GetCurrentInstant());
        foreach (var (contact, place) in fields.Contacts.Select((contact, place) => (contact, place)))
        {
            var person = contact.PersonId is { } id ? people[id] : new Known(contact.Name!, contact.Email!);
            watch.Contacts.Add(new()
            {
                WatchId = watch.Id,
                Place = place,
                PersonId = contact.PersonId,
                Name = person.Name,
                Address = person.Email!,
            });
        }
        db.Add(watch);
        // Whoever is at work is told when the day closes.
        look.Note(WeatherChange.OfParcels([list.Task.ParcelId]));
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        look.Enqueue();
        return Change.Done(watch);
    }

    private static CrewWatch New(DayChecklist list, WatchFields fields, RuleVerdict? alone, Signer by, Instant now)
    {
        var watch = new CrewWatch
        {
            TaskId = list.Task.Id,
            Day = list.Day,
            PeopleOnSite = fields.PeopleOnSite,
            IntervalMinutes = fields.IntervalMinutes,
            GraceMinutes = fields.GraceMinutes,
            EscalationMinutes = fields.EscalationMinutes,
            StartedAt = now,
            StartedById = by.PersonId,
            StartedBy = by.Name,
            DueAt = now + Duration.FromMinutes(fields.IntervalMinutes),
            BegunUnreleased = Despite(list, alone),
            LinkKey = AlarmLink.NewKey(),
        };
        watch.CheckIns.Add(new()
        {
            WatchId = watch.Id,
            Number = 0,
            Kind = CheckInKind.Started,
            At = now,
            ById = by.PersonId,
            By = by.Name,
        });
        return watch;
    }

    /// <summary>Why the work must not go on, where somebody who is at it already is watched all the same.</summary>
    private static string? Despite(DayChecklist list, RuleVerdict? alone)
    {
        var reasons = new[]
        {
            list.Release.IsReleased ? null : list.Release.Statement,
            alone is null ? null : $"One person is alone at work that must not be done alone: {alone.Rule.Because}",
        }.OfType<string>().ToArray();
        return reasons.Length == 0 ? null : string.Join(' ', reasons);
    }

    private static Change<CrewWatch> NotReleased(DayChecklist list) => Change.Unprocessable<CrewWatch>(
        $"{list.Release.Statement} No watch begins for work that must not begin. If the crew is on the site already, "
        + "say so, and it is watched.",
        ("field", "onSite"), ("release", ReleaseView.Of(list.Release)),
        ("checklist", $"/api/tasks/{list.Task.Id}/checklists/{list.Day:R}"));

    private async Task<Dictionary<Guid, Known>> PeopleAsync(WatchFields fields, CancellationToken cancellation)
    {
        var named = fields.Contacts.Select(contact => contact.PersonId).OfType<Guid>().ToList();
        return await db.People.Where(person => named.Contains(person.Id)).ToDictionaryAsync(
            person => person.Id, person => new Known(person.DisplayName, person.Email), cancellation);
    }

    private static void Check(WatchFields fields, Dictionary<Guid, Known> people, FieldFaults faults)
    {
        var used = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var (contact, place) in fields.Contacts.Select((contact, place) => (contact, place)))
        {
            var address = contact.PersonId is { } id ? people.GetValueOrDefault(id)?.Email : contact.Email;
            if (contact.PersonId is { } asked && (address is null || !FieldText.IsMail(address)))
                faults.Add($"contacts[{place}].personId", asked, "a person of the organization who has a mail address");
            else if (!string.IsNullOrEmpty(address) && !used.Add(address))
                faults.AddSentence($"contacts[{place}]", "The same mail address stands in the list already.");
        }
    }

    private sealed record Known(string Name, string? Email);
}
