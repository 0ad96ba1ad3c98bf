using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using NodaTime;
using WorkWindows.Engine.Chances;
using WorkWindows.Engine.Days;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices.Certificates;
using WorkWindows.Service.Notices.FollowUps;
using WorkWindows.Service.Prescriptions;
using WorkWindows.Service.Safety.Checklists;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Notices;

/// <summary>
/// Evaluates tasks, keeps what changed, and gathers all that the notices of a night are planned from.
/// </summary>
public sealed class NightReader(
    WorkWindowsDb db, TaskEvaluator evaluator, DecisionStore decisions, IOptions<SiteOptions> site)
{
    private const int DaysEvaluated = 366;

    /// <summary>Announcements that ended before yesterday in any zone cannot touch a coming day.</summary>
    private const int DaysBack = 3;

    /// <summary>A reminder is of tomorrow, which may be the day after tomorrow at home.</summary>
    private const int DaysReminded = 2;

    /// <param name="now">The time of the night.</param>
    /// <param name="lookedAt">The tasks to look at, completed ones among them or not.</param>
    /// <param name="isWhole">Whether these are all tasks, so that what hangs on no task is looked at too.</param>
    /// <param name="cancellation">Ends the queries.</param>
    /// <exception cref="Hosting.ClockSetBackException">A decision was made later than the clock says it is.</exception>
    public async Task<Night> ReadAsync(
        Instant now, IQueryable<PlannedTask> lookedAt, bool isWhole, CancellationToken cancellation)
    {
        var tasks = await EvaluateAsync(now, lookedAt, cancellation);
        var organization = await db.Organizations.AsNoTracking().SingleAsync(cancellation);
        var zone = DateTimeZoneProviders.Tzdb[organization.TimeZone];
        var date = now.InZone(zone).Date;
        var oldest = date.PlusDays(-DaysBack);
        var ids = tasks.Select(task => task.Task.Id).ToList();
        var others = Open.Where(task => !ids.Contains(task.Id));
        var announced = await db.Announcements
            .Where(window => window.StoppedAt == null && window.LastDay >= oldest
                && !others.Any(task => task.Id == window.TaskId))
            .OrderBy(window => window.FirstDay).ThenBy(window => window.Id).ToListAsync(cancellation);
        var written = await db.Messages.Where(message => message.CreatedAt >= now - Duration.FromDays(DaysBack))
            .Select(message => message.DedupeKey).ToListAsync(cancellation);
        var partly = await others.Where(task => task.Parcel.Property.LandownerId != null)
            .Select(task => task.Parcel.Property.LandownerId!.Value).ToHashSetAsync(cancellation);
        return new(
            now, date, new(organization.Name, organization.PostalAddress), tasks, announced,
            await Recipients.ReadAsync(db, zone, cancellation), written.Select(Message.KeyOf).ToHashSet())
        {
            SeenInPart = partly,
            Waiting = await WaitingAsync(announced, cancellation),
            ToldToStop = await StoppedAsync(ids, oldest, cancellation),
            SeasonEnds = await db.SeasonEnds.Where(end => ids.Contains(end.TaskId))
                .OrderBy(end => end.TaskId).ThenBy(end => end.PersonId).ToListAsync(cancellation),
            Topics = (await db.ToldTopics.AsNoTracking().ToListAsync(cancellation))
                .Select(topic => (topic.PersonId, topic.Topic)).ToHashSet(),
            FollowUps = isWhole ? await FollowUpsAsync(cancellation) : [],
            Certificates = isWhole ? await CertificatesAsync(cancellation) : [],
            Signed = await SignedVersion.OfAsync(db, date, date.PlusDays(DaysReminded), cancellation),
            Shift = new(organization.ShiftStart, organization.ShiftEnd),
            SiteAddress = site.Value.Address,
        };
    }

    private IQueryable<PlannedTask> Open => db.PlannedTasks.Where(task => task.CompletedOn == null);

    private async Task<List<TaskTonight>> EvaluateAsync(
        Instant now, IQueryable<PlannedTask> lookedAt, CancellationToken cancellation)
    {
        var open = lookedAt.Where(task => task.CompletedOn == null);
        var zones = await open.Select(task => task.Parcel.Property.TimeZone).Distinct().ToListAsync(cancellation);
        var waiting = await open
            .Where(task => task.Prerequisites.Any(link => Open.Any(first => first.Id == link.PrerequisiteId)))
            .Select(task => task.Id).ToHashSetAsync(cancellation);
        var booked = await BookedAsync(open, cancellation);
        var onSite = await OnSiteAsync(open, cancellation);
        var tonight = new List<TaskTonight>();
        foreach (var zone in zones.Order(StringComparer.Ordinal))
        {
            var today = now.InZone(DateTimeZoneProviders.Tzdb[zone]).Date;
            var days = new DaySpan(today, DaysEvaluated);
            var inputs = await evaluator.ReadAsync(
                open.Where(task => task.Parcel.Property.TimeZone == zone), days, cancellation);
            var evaluated = inputs.Select(input => (Input: input, Task: input.Evaluated())).ToList();
            await decisions.AddChangedAsync([.. evaluated.Select(one => one.Task)], days, cancellation);
            // Before the next zone's, which may rest on the same packs and snapshots.
            await db.SaveChangesAsync(cancellation);
            tonight.AddRange(evaluated.Select(one => new TaskTonight(
                one.Task.Task, one.Task.Evaluation, today,
                waiting.Contains(one.Task.Task.Id) || one.Task.Task.NotBefore > today.PlusDays(Night.DaysAhead))
            {
                ChancesOf = asked => Chances(one.Input, asked),
                Booked = [.. booked[one.Task.Task.Id].Where(crew => crew.Day >= today)],
                OnSite = [.. onSite[one.Task.Task.Id]],
            }));
        }
        return tonight;
    }

    private async Task<ILookup<Guid, (LocalDate Day, Guid Person)>> BookedAsync(
        IQueryable<PlannedTask> open, CancellationToken cancellation) =>
        (await db.Bookings.AsNoTracking().Where(booking => open.Any(task => task.Id == booking.TaskId))
            .SelectMany(booking => booking.People, (booking, one) => new { booking.TaskId, booking.Day, one.PersonId })
            .OrderBy(row => row.Day).ThenBy(row => row.PersonId).ToListAsync(cancellation))
        .ToLookup(row => row.TaskId, row => (row.Day, row.PersonId));

    private async Task<ILookup<Guid, Guid>> OnSiteAsync(
        IQueryable<PlannedTask> open, CancellationToken cancellation) =>
        (await db.CrewWatches.AsNoTracking()
            .Where(watch => watch.EndedAt == null && watch.StartedById != null && open.Any(task => task.Id == watch.TaskId))
            .Select(watch => new { watch.TaskId, watch.StartedById }).ToListAsync(cancellation))
        .ToLookup(watch => watch.TaskId, watch => watch.StartedById!.Value);

    private async Task<HashSet<(Guid, Guid, LocalDate)>> StoppedAsync(
        List<Guid> tasks, LocalDate oldest, CancellationToken cancellation) =>
    [
        .. (await db.Announcements.AsNoTracking()
            .Where(window => window.StoppedAt != null && window.LastDay >= oldest && tasks.Contains(window.TaskId))
            .ToListAsync(cancellation))
            .SelectMany(window => Enumerable.Range(0, Period.DaysBetween(window.FirstDay, window.LastDay) + 1)
                .Select(day => (window.TaskId, window.PersonId, window.FirstDay.PlusDays(day)))),
    ];

    private static TaskChances? Chances(TaskInput input, DaySpan days) =>
        input.Weather.Chances.Ensemble.Years.IsEmpty ? null : input.ChancesOf(days);

    /// <summary>
    /// A message that nobody has taken up has not left; of one that somebody has, nobody can say. Those that nobody has
    /// are held until the night is stored, so that none leaves after it was looked at.
    /// </summary>
    private async Task<Dictionary<string, bool>> WaitingAsync(
        List<Announcement> announced, CancellationToken cancellation)
    {
        var keys = announced.Select(window => window.MessageKey).OfType<string>()
            .SelectMany(key => new[] { key, key + Message.WebhookSuffix }).ToHashSet();
        var reminded = announced.Select(window => window.PersonId).ToHashSet();
        await db.Database.ExecuteSqlAsync($"""
            select 1 from messages
            where sent_at is null and dead_at is null and attempts = 0 and leased_until is null
              and kind in ({NoticeKinds.GoodToCut}, {NoticeKinds.Reminder})
            order by id for update
            """, cancellation);
        var rows = await db.Messages.AsNoTracking()
            .Where(message => keys.Contains(message.DedupeKey)
                || (message.Kind == NoticeKinds.Reminder && reminded.Contains(message.RecipientId!.Value)
                    && message.SentAt == null && message.DeadAt == null))
            .Select(message => new
            {
                message.DedupeKey,
                Waits = message.SentAt == null && message.DeadAt == null,
                IsTouched = message.Attempts > 0 || message.LeasedUntil != null || message.LastError != null,
            })
            .ToListAsync(cancellation);
        return rows.GroupBy(row => Message.KeyOf(row.DedupeKey))
            .Where(ways => ways.Any(row => row.Waits))
            .ToDictionary(ways => ways.Key, ways => ways.Any(row => row.IsTouched || !row.Waits));
    }

    private async Task<List<DueFollowUp>> FollowUpsAsync(CancellationToken cancellation)
    {
        var rules = await db.FollowUpsAsync(cancellation);
        var practices = rules.SelectMany(one => new[] { one.After.Id, one.Practice.Id }).Distinct().ToList();
        var tasks = await db.PlannedTasks.AsNoTracking().Where(task => practices.Contains(task.PracticeId))
            .OrderBy(task => task.Parcel.Property.Name).ThenBy(task => task.Parcel.Name).ThenBy(task => task.Key)
            .Select(task => new
            {
                task.Id,
                task.Key,
                task.PracticeId,
                task.ParcelId,
                task.CompletedOn,
                Parcel = task.Parcel.Name,
                Property = task.Parcel.Property.Name,
            })
            .ToListAsync(cancellation);
        var byWork = tasks.ToLookup(task => (task.ParcelId, task.PracticeId));
        return
        [
            .. from task in tasks
               let completed = task.CompletedOn
               where completed is not null
               from followUp in rules
               where followUp.After.Id == task.PracticeId
               let later = byWork[(task.ParcelId, followUp.Practice.Id)].Where(one => one.Id != task.Id).ToList()
               where !later.Exists(one => one.CompletedOn > completed)
               select new DueFollowUp(
                   task.Id, followUp, completed.GetValueOrDefault(), task.Property, task.Parcel,
                   later.Find(one => one.CompletedOn is null)?.Key),
        ];
    }

    private async Task<List<HeldCertificate>> CertificatesAsync(CancellationToken cancellation) =>
        await db.Certificates.AsNoTracking()
            .Join(
                db.People, held => held.PersonId, person => person.Id,
                (held, person) => new { held, person.DisplayName })
            .OrderBy(row => row.held.ValidUntil).ThenBy(row => row.held.Id)
            .Select(row => new HeldCertificate(
                row.held.Id, row.held.PersonId, row.DisplayName, row.held.Title, row.held.ValidUntil))
            .ToListAsync(cancellation);
}
