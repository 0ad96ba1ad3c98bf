using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Feeds;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Imports;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Safety;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tasks;

/// <summary>Stores a file of planned tasks: all of it or nothing, and the same file again changes nothing.</summary>
public sealed class TaskImportHandler(
    WorkWindowsDb db, CurrentOrganization organization, PlannedCompany company, ILookupNormalizer normalizer,
    PromptLook look)
{
    /// <param name="file">CSV as docs/files.md describes it.</param>
    /// <param name="cancellation">Ends the queries; nothing is stored then.</param>
    public Task<ImportOutcome<ImportCounts>> ImportAsync(Stream file, CancellationToken cancellation) =>
        ReadAsync(file, isPreview: false, cancellation);

    /// <summary>Says what an import would do, and stores nothing.</summary>
    /// <inheritdoc cref="ImportAsync"/>
    public Task<ImportOutcome<ImportCounts>> PreviewAsync(Stream file, CancellationToken cancellation) =>
        ReadAsync(file, isPreview: true, cancellation);

    private async Task<ImportOutcome<ImportCounts>> ReadAsync(Stream file, bool isPreview, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        var parcels = await db.Parcels.ToDictionaryAsync(parcel => parcel.Key, parcel => parcel.Id, cancellation);
        var tasks = await db.PlannedTasks.Include(task => task.Prerequisites)
            .ToDictionaryAsync(task => task.Key, cancellation);
        var import = TaskFile.Read(file, parcels.Keys.ToHashSet(), tasks.Keys.ToHashSet());
        if (!import.IsAccepted)
            return ImportOutcome.Refused<ImportCounts>(import.Faults);
        var leads = await LeadsAsync(cancellation);
        var faults = Faults(import.Rows, tasks, leads);
        if (!faults.IsEmpty)
            return ImportOutcome.Refused<ImportCounts>(faults);

        foreach (var row in import.Rows.Where(row => !tasks.ContainsKey(row.Key)))
            tasks[row.Key] = Add(row, parcels);
        var touched = new List<PlannedTask>(import.Rows.Length);
        foreach (var row in import.Rows)
        {
            var task = tasks[row.Key];
            Apply(row, task, parcels, leads, [.. row.Prerequisites.Select(key => tasks[key].Id)]);
            touched.Add(task);
        }
        var counts = Count(touched);
        var changes = isPreview ? ImportPreview.Of(db) : [];
        if (counts.Created + counts.Updated > 0)
            look.Note(WeatherChange.OfParcels([.. touched.Select(task => task.ParcelId).Distinct()]));
        await db.SaveChangesAsync(cancellation);
        var alone = await company.ForbiddenAsync([.. touched.Select(task => task.Id)], cancellation);
        if (alone.Count > 0)
            return ImportOutcome.Refused<ImportCounts>(Alone(import.Rows, tasks, alone));
        // What is not committed is not stored.
        if (isPreview)
            return ImportOutcome.Stored(counts) with { Changes = changes };
        await change.CommitAsync(cancellation);
        look.Enqueue();
        return ImportOutcome.Stored(counts);
    }

    private static FaultReport Alone(
        IReadOnlyList<TaskRow> rows, Dictionary<string, PlannedTask> tasks, IReadOnlyDictionary<Guid, RuleVerdict> laws)
    {
        var faults = rows.Where(row => laws.ContainsKey(tasks[row.Key].Id))
            .Select(row => (Row: row, laws[tasks[row.Key].Id].Rule))
            .Select(one => new InputFault(one.Row.Line, "crewSize", "1",
                $"2 or more on a scheduled day: this work must not be done alone ({Wording.Of(one.Rule.Source)})", one.Row.Key))
            .ToList();
        return new([.. faults.Take(FaultReport.Limit)], Math.Max(0, faults.Count - FaultReport.Limit));
    }

    private async Task<Dictionary<string, Guid>> LeadsAsync(CancellationToken cancellation) => await db.People
        .Where(person => person.NormalizedEmail != null
            && (person.Role == Role.CrewLead || person.Role == Role.Consultant))
        .ToDictionaryAsync(person => person.NormalizedEmail!, person => person.Id, cancellation);

    /// <summary>
    /// What the file itself cannot know: who leads crews, and which tasks wait for which outside of it.
    /// </summary>
    private FaultReport Faults(
        IReadOnlyList<TaskRow> rows, Dictionary<string, PlannedTask> tasks, Dictionary<string, Guid> leads)
    {
        var faults = rows
            .Where(row => row.CrewLead is not null && !leads.ContainsKey(normalizer.NormalizeEmail(row.CrewLead)))
            .Select(row => new InputFault(row.Line, "crewLead", row.CrewLead!,
                "the mail address of a crew lead or consultant of the organization", row.Key))
            .ToList();
        var inFile = rows.Select(row => row.Key).ToHashSet();
        var keys = tasks.Values.ToDictionary(task => task.Id, task => task.Key);
        var order = tasks.Values.Where(task => !inFile.Contains(task.Key))
            .SelectMany(task => task.Prerequisites, (task, link) => (task.Key, Earlier: keys[link.PrerequisiteId]))
            .Concat(rows.SelectMany(row => row.Prerequisites, (row, earlier) => (row.Key, Earlier: earlier)))
            .ToLookup(link => link.Key, link => link.Earlier);
        var reported = new HashSet<string>();
        foreach (var row in rows.Where(row => !reported.Contains(row.Key)))
        {
            if (PrerequisiteOrder.CircleThrough(order, row.Key) is not { } circle)
                continue;
            reported.UnionWith(circle);
            faults.Add(new(row.Line, "prerequisites", string.Join(" after ", circle),
                "prerequisites that do not lead back to the task itself", row.Key));
        }
        return new([.. faults.Take(FaultReport.Limit)], Math.Max(0, faults.Count - FaultReport.Limit));
    }

    private PlannedTask Add(TaskRow row, Dictionary<string, Guid> parcels)
    {
        var task = new PlannedTask
        {
            Key = row.Key,
            ParcelId = parcels[row.Parcel],
            PracticeId = row.Practice.Id,
            CrewSize = row.CrewSize,
        };
        db.Add(task);
        return task;
    }

    private void Apply(
        TaskRow row, PlannedTask task, Dictionary<string, Guid> parcels, Dictionary<string, Guid> leads,
        IReadOnlyList<Guid> prerequisites)
    {
        (task.ParcelId, task.PracticeId) = (parcels[row.Parcel], row.Practice.Id);
        (task.Quantity, task.QuantityUnit) = ((decimal)row.Quantity, row.Unit.ToString().ToLowerInvariant());
        task.CrewSize = row.CrewSize;
        task.CrewLeadId = row.CrewLead is { } lead ? leads[normalizer.NormalizeEmail(lead)] : null;
        (task.Deadline, task.ScheduledOn) = (row.Deadline, row.ScheduledOn);
        task.ComeAfter(prerequisites);
    }

    /// <summary>A task whose prerequisites alone are different has changed too.</summary>
    private ImportCounts Count(IReadOnlyCollection<PlannedTask> touched)
    {
        db.ChangeTracker.DetectChanges();
        var reordered = db.ChangeTracker.Entries<TaskPrerequisite>()
            .Where(link => link.State is EntityState.Added or EntityState.Deleted)
            .Select(link => link.Entity.TaskId).ToHashSet();
        var states = touched
            .Select(task => (task.Id, db.Entry(task).State))
            .Select(task => task.State == EntityState.Unchanged && reordered.Contains(task.Id)
                ? EntityState.Modified
                : task.State)
            .ToList();
        return ImportCounts.Of(states);
    }
}
