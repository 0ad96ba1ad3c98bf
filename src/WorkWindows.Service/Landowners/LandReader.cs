using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Safety;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Morning;
using WorkWindows.Service.Notices.Calendars;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Prescriptions;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Landowners;

/// <summary>
/// Reads what a landowner is shown: their own land and nothing else, whoever asks for it. Days are those of the stored
/// outlooks, so that the page is quick on an old phone.
/// </summary>
public sealed class LandReader(WorkWindowsDb db, CalendarFeed calendars, IClock clock)
{
    private const int DaysShown = 7;
    private const int MostDone = 12;
    private const int MostNext = 8;

    /// <returns>Null where there is no such landowner.</returns>
    public async Task<LandView?> ReadAsync(Guid ownerId, HttpRequest request, CancellationToken cancellation)
    {
        var owner = await db.People.Where(person => person.Id == ownerId && person.Role == Role.Landowner)
            .Select(person => new
            {
                person.DisplayName,
                person.OrganizationId,
                Organization = db.Organizations.Select(organization => organization.Name).Single(),
                Zone = db.Organizations.Select(organization => organization.TimeZone).Single(),
                Settings = db.NoticeSettings.SingleOrDefault(row => row.PersonId == ownerId),
            }).SingleOrDefaultAsync(cancellation);
        if (owner is null)
            return null;
        var today = clock.GetCurrentInstant().InZone(DateTimeZoneProviders.Tzdb[owner.Zone]).Date;
        var properties = await db.Properties.AsNoTracking().Include(property => property.Parcels)
            .Where(property => property.LandownerId == ownerId).OrderBy(property => property.Name).ToListAsync(cancellation);
        var tasks = await db.PlannedTasks.AsNoTracking().Include(task => task.Prerequisites)
            .Where(task => task.Parcel.Property.LandownerId == ownerId).OrderBy(task => task.Key).ToListAsync(cancellation);
        var outlooks = await db.TaskOutlooks.AsNoTracking()
            .Where(outlook => db.PlannedTasks.Any(task => task.Id == outlook.TaskId && task.Parcel.Property.LandownerId == ownerId))
            .ToDictionaryAsync(outlook => outlook.TaskId, cancellation);
        // A record that takes hours back puts another one right: a day of which all is taken back was not worked.
        var worked = (await db.WorkRecords
            .Where(record => db.PlannedTasks.Any(task => task.Id == record.TaskId && task.Parcel.Property.LandownerId == ownerId))
            .GroupBy(record => new { record.TaskId, record.Day })
            .Where(day => day.Sum(record => record.PersonHours) > 0).Select(day => day.Key).ToListAsync(cancellation))
            .ToLookup(day => day.TaskId, day => day.Day);
        var rules = await db.FollowUpsAsync(cancellation);
        var open = tasks.FindAll(task => task.CompletedOn is null);
        var safety = open.Select(task => PracticeCatalogue.Find(task.PracticeId)).OfType<Practice>().Distinct()
            .SelectMany(practice => SafetyChecklist.For(new(practice)).Items).ToList();
        return new(
            owner.DisplayName, owner.Organization, today,
            [.. properties.Select(property => PropertyOf(property, tasks, outlooks, worked, rules, today))],
            Texts(safety, SafetyItemKind.Wear), Texts(safety, SafetyItemKind.Stop),
            owner.Settings?.CalendarKey is { } key ? calendars.AddressOf(owner.OrganizationId, key, request) : null)
        {
            Units = PersonUnits.Of(owner.Settings),
        };
    }

    private static string[] Texts(IEnumerable<SafetyItem> items, SafetyItemKind kind) =>
        [.. items.Where(item => item.Kind == kind).Select(item => item.Statement).Distinct()];

    private LandProperty PropertyOf(
        Property property, List<PlannedTask> tasks, Dictionary<Guid, TaskOutlook> outlooks, ILookup<Guid, LocalDate> worked,
        ImmutableArray<FollowUp> rules, LocalDate today)
    {
        var parcels = property.Parcels.OrderBy(parcel => parcel.Name, StringComparer.OrdinalIgnoreCase).ToList();
        var years = parcels.SelectMany(parcel => ParcelYearsReader.Of(
                parcel, tasks.FindAll(task => task.ParcelId == parcel.Id), [], null, rules, today)
            .Steps.Select(step => (Step: step, Parcel: parcel.Name))).ToList();
        var own = parcels.SelectMany(parcel => tasks.Where(task => task.ParcelId == parcel.Id)
            .Select(task => (Task: task, Parcel: parcel.Name))).ToList();
        return new(
            property.Name,
            [.. own.Where(one => one.Task.CompletedOn is null && !IsFarOff(one.Task, today))
                .Select(one => WorkOf(one.Task, one.Parcel, tasks, outlooks.GetValueOrDefault(one.Task.Id), today))],
            [.. DoneOn(own, worked).OrderByDescending(done => done.Day).Take(MostDone).Select(done => done.Says)],
            [
                .. years.Where(one => one.Step.State == StepState.Due
                        || (one.Step.State == StepState.Planned && one.Step.From > today.PlusDays(DaysShown)))
                    .OrderBy(one => one.Step.Year).ThenBy(one => one.Step.From).Take(MostNext).Select(one =>
                        $"{one.Step.Practice}, {one.Parcel}: {(one.Step.IsExpected ? "about " : "")}{When(one.Step, today)}"),
            ]);
    }

    /// <summary>Work of later years is told among what comes next.</summary>
    private static bool IsFarOff(PlannedTask task, LocalDate today) => task.NotBefore > today.PlusDays(DaysShown);

    private static string When(Step step, LocalDate today) => step.From is { } from && from > today
        ? step.To is { } to && to.Year > from.Year ? $"{from.Year} to {to.Year}" : $"{from.Year}"
        : "due now";

    private static IEnumerable<(LocalDate Day, string Says)> DoneOn(
        IEnumerable<(PlannedTask Task, string Parcel)> own, ILookup<Guid, LocalDate> worked)
    {
        foreach (var (task, parcel) in own)
        {
            var work = $"{Name(task)}, {parcel}";
            if (task.CompletedOn is { } done)
                yield return (done, $"{DayWords.WithYear(done)}: {work}, finished");
            foreach (var day in worked[task.Id].Where(day => day != task.CompletedOn))
            {
                yield return (day, $"{DayWords.WithYear(day)}: {work}, worked on");
            }
        }
    }

    private LandWork WorkOf(
        PlannedTask task, string parcel, List<PlannedTask> tasks, TaskOutlook? outlook, LocalDate today)
    {
        var first = task.Prerequisites.Select(link => tasks.Find(one => one.Id == link.PrerequisiteId))
            .FirstOrDefault(one => one is { CompletedOn: null });
        var note = first is not null ? $"{Name(first)} comes first."
            : task.ScheduledOn >= today ? $"A crew is to come on {DayWords.Of(task.ScheduledOn.Value, today)}."
            : task.Deadline >= today ? $"To be done by {DayWords.Of(task.Deadline.Value, today)}."
            : null;
        return new($"{Name(task)}, {parcel}", first is not null || task.NotBefore > today, note, [.. DaysOf(outlook, today)]);
    }

    private IEnumerable<LandDays> DaysOf(TaskOutlook? outlook, LocalDate today)
    {
        var isOld = !(clock.GetCurrentInstant() - outlook?.SeenAt <= TaskOutlook.LongestAge);
        LandDays? run = null;
        for (var day = today; day < today.PlusDays(DaysShown); day = day.PlusDays(1))
        {
            var next = new LandDays(
                day, day, isOld ? Engine.Evaluation.DayState.Unknown : TaskOutlook.Read(outlook?.FirstDay, outlook?.States, day),
                isOld ? "nobody has looked at it since yesterday" : WhyOf(outlook!, day));
            if (run is not null && (run.State, run.Why) == (next.State, next.Why))
            {
                run = run with { Last = day };
                continue;
            }
            if (run is not null)
                yield return run;
            run = next;
        }
        yield return run!;
    }

    /// <summary>The reason without the state, which stands before it.</summary>
    private static string WhyOf(TaskOutlook outlook, LocalDate day)
    {
        var index = Period.DaysBetween(outlook.FirstDay, day);
        var why = index >= 0 && index < outlook.Why.Count ? outlook.Why[index] : "";
        var colon = why.IndexOf(": ", StringComparison.Ordinal);
        var saysState = why.StartsWith("closed", StringComparison.Ordinal) || why.StartsWith("not known", StringComparison.Ordinal);
        return saysState && colon > 0 ? why[(colon + 2)..] : why;
    }

    private static string Name(PlannedTask task) => PracticeCatalogue.Find(task.PracticeId)?.Name ?? task.PracticeId;
}
