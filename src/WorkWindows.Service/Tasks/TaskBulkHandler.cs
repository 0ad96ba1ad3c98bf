using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Practices;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Imports;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Safety;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tasks;

/// <summary>What is to be otherwise of several tasks; what is null stays as it is.</summary>
/// <param name="NotBefore">The first day on which they may be done.</param>
/// <param name="Deadline">The last one.</param>
/// <param name="CrewSize">How many people.</param>
/// <param name="Points">What each is worth.</param>
/// <param name="TakeOff">Of notBefore, deadline and points, those that are taken off.</param>
public sealed record BulkChange(
    LocalDate? NotBefore, LocalDate? Deadline, int? CrewSize, decimal? Points, IReadOnlyList<string>? TakeOff)
{
    internal bool IsEmpty =>
        NotBefore is null && Deadline is null && CrewSize is null && Points is null && TakeOff is null or [];

    internal void Apply(PlannedTask task)
    {
        task.NotBefore = Of("notBefore", NotBefore, task.NotBefore);
        task.Deadline = Of("deadline", Deadline, task.Deadline);
        task.Points = Of("points", Points, task.Points);
        task.CrewSize = CrewSize ?? task.CrewSize;
    }

    private T? Of<T>(string field, T? wanted, T? stored) where T : struct =>
        TakeOff?.Contains(field) == true ? null : wanted ?? stored;
}

/// <summary>Changes several tasks: all of them or none.</summary>
public sealed class TaskBulkHandler(
    WorkWindowsDb db, CurrentOrganization organization, PlannedCompany company, PromptLook look)
{
    /// <param name="ids">The tasks.</param>
    /// <param name="change">What is to be otherwise.</param>
    /// <param name="isPreview">Says what would change, and stores nothing.</param>
    /// <param name="cancellation">Ends the queries; nothing is stored then.</param>
    /// <returns>What changes, task by task.</returns>
    public async Task<Change<IReadOnlyList<RowChange>>> ChangeAsync(
        IReadOnlyCollection<Guid> ids, BulkChange change, bool isPreview, CancellationToken cancellation)
    {
        await using var transaction = await OrganizationChange.BeginAsync(db, organization, cancellation);
        var tasks = await db.PlannedTasks.Where(task => ids.Contains(task.Id)).OrderBy(task => task.Key)
            .ToListAsync(cancellation);
        var faults = new FieldFaults();
        if (tasks.Count == 0)
            faults.AddSentence("ids", "Choose at least one task.");
        if (change.IsEmpty)
            faults.AddSentence("change", "Say what is to be otherwise.");
        foreach (var task in tasks)
        {
            change.Apply(task);
            Check(task, faults);
        }
        if (faults.Any)
            return Change.Refused<IReadOnlyList<RowChange>>(faults);
        var changes = ImportPreview.Of(db);
        look.Note(WeatherChange.OfParcels([.. tasks.Select(task => task.ParcelId).Distinct()]));
        await db.SaveChangesAsync(cancellation);
        if ((await company.ForbiddenAsync([.. tasks.Select(task => task.Id)], cancellation)).Values.FirstOrDefault() is { } law)
            return CompanyRules.Refuse<IReadOnlyList<RowChange>>(law, "crewSize");
        // What is not committed is not stored.
        if (isPreview)
            return Change.Done(changes);
        await transaction.CommitAsync(cancellation);
        look.Enqueue();
        return Change.Done(changes);
    }

    /// <summary>The same limits as of one task, named with its key.</summary>
    private static void Check(PlannedTask task, FieldFaults faults)
    {
        var own = new FieldFaults();
        new TaskForm(
            task.Key, task.ParcelId, task.PracticeId, task.Quantity, task.QuantityUnit, task.CrewSize, task.CrewLeadId,
            task.Deadline, task.ScheduledOn, null, task.NotBefore, task.FollowsId, task.HoursLow, task.HoursHigh,
            task.Points).Check(own);
        foreach (var (field, messages) in own.Errors)
        {
            foreach (var message in messages)
                faults.AddSentence(field, $"{PracticeCatalogue.Find(task.PracticeId)?.Name ?? task.PracticeId}, {task.Key}: {message}");
        }
    }
}
