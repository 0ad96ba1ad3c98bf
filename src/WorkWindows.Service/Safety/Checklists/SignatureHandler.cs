using System.Text;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Audit;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Safety.Checklists;

/// <summary>Takes signatures under checklists.</summary>
public sealed class SignatureHandler(
    WorkWindowsDb db, ChecklistReader checklists, Caller caller, AuditLog audit, IClock clock)
{
    private const string SomebodyElse =
        "Somebody else signed this on the phone, and it is not stored under your name. It is sent when they sign in.";

    /// <summary>
    /// Stores that the caller has acknowledged every line of the list as it stands. A signature is stored whatever the
    /// day has become since; only a workable day is released by it.
    /// </summary>
    /// <param name="taskId">The task.</param>
    /// <param name="day">The day in the property's zone.</param>
    /// <param name="form">What was signed.</param>
    /// <param name="cancellation">Ends the queries; nothing is stored then.</param>
    /// <returns>A conflict, with what changed, when the list is not the one that was shown.</returns>
    public async Task<Change<ChecklistSignature>> SignAsync(
        Guid taskId, LocalDate day, SignatureForm form, CancellationToken cancellation)
    {
        // Before anything else: whoever holds the phone now may not even see the task.
        if (form.PersonId is { } signer && signer != caller.PersonId)
            return Change.Forbidden<ChecklistSignature>(SomebodyElse);
        if (await checklists.ReadAsync(taskId, day, cancellation) is not { } now)
            return Change.NotFound<ChecklistSignature>();
        var faults = new FieldFaults();
        var fields = form.Check(clock.GetCurrentInstant(), faults);
        if (fields.InsteadBecause is not null && !now.MayBeReleasedInstead(caller))
            faults.AddSentence("insteadBecause", "Only a consultant who is not the crew lead releases in their place.");
        if (faults.Any)
            return Change.Refused<ChecklistSignature>(faults);

        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        // What is sent twice at once waits here, and the second finds what the first has stored.
        await db.PlannedTasks.FromSql($"select * from planned_tasks where id = {taskId} for update").AsNoTracking()
            .ToListAsync(cancellation);
        if (await db.ChecklistSignatures.AsNoTracking().SingleOrDefaultAsync(row => row.Key == fields.Key, cancellation)
            is { } stored)
        {
            return stored.TaskId == taskId && stored.Day == day && stored.PersonId == caller.PersonId
                ? Change.Done(stored)
                : Change.Conflict<ChecklistSignature>("The key is that of another signature: make one for each.");
        }
        if (Refusal(now, fields) is { } refusal)
            return refusal;
        var signature = await NewAsync(now, fields, cancellation);
        db.Add(signature);
        await audit.AddAsync(
            AuditKind.ChecklistSignature, signature.Id, null, SignatureView.Of(signature), cancellation);
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return Change.Done(signature);
    }

    private static Change<ChecklistSignature>? Refusal(DayChecklist now, SignatureFields fields)
    {
        if (!now.MayBeSigned)
        {
            return Change.Unprocessable<ChecklistSignature>(
                $"A checklist is signed from {DayChecklist.DaysAhead} days before its day to the day after it.");
        }
        var changes = ChecklistDifference.Of(fields.Items, now.Checklist);
        if (fields.Version == now.Checklist.Version)
        {
            var faults = new FieldFaults();
            foreach (var change in changes)
            {
                faults.AddSentence(
                    "items", $"'{change.Id}' is not acknowledged as the list of this version has it: {change.Words}");
            }
            return faults.Any ? Change.Refused<ChecklistSignature>(faults) : null;
        }
        return Change.Conflict<ChecklistSignature>(
            changes.Count == 0
                ? "The checklist has changed since it was shown: its sources or its order, not its words. Read it "
                    + "again."
                : "The checklist has changed since it was shown. Read what is new, and sign again.",
            ("version", now.Checklist.Version), ("changes", changes));
    }

    private async Task<ChecklistSignature> NewAsync(
        DayChecklist now, SignatureFields fields, CancellationToken cancellation) => new()
        {
            TaskId = now.Task.Id,
            Day = now.Day,
            Version = now.Checklist.Version,
            Content = Encoding.UTF8.GetString(now.Checklist.Content.AsSpan()),
            Key = fields.Key,
            PersonId = caller.PersonId!.Value,
            Person = await db.People.Where(person => person.Id == caller.PersonId)
                .Select(person => person.DisplayName).SingleAsync(cancellation),
            Role = caller.Role,
            TypedName = fields.Name,
            InsteadBecause = fields.InsteadBecause,
            SignedAt = fields.SignedAt,
            ReceivedAt = clock.GetCurrentInstant(),
        };
}
