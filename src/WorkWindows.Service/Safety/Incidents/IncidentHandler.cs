using System.Text.Json;
using Microsoft.AspNetCore.Http.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using NodaTime;
using WorkWindows.Service.Audit;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Safety.CheckIns;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Safety.Incidents;

/// <summary>Records incidents with what the day was like.</summary>
public sealed class IncidentHandler(
    WorkWindowsDb db, VisibleTasks visible, WindowHandler windows, DecisionStore decisions, AuditLog audit, IOptions<JsonOptions> json,
    IClock clock)
{
    /// <param name="taskId">The task at which it happened.</param>
    /// <param name="form">What is recorded.</param>
    /// <param name="by">Who records it.</param>
    /// <param name="cancellation">Ends the queries; nothing is stored then.</param>
    public async Task<Change<Incident>> RecordAsync(
        Guid taskId, IncidentForm form, Signer by, CancellationToken cancellation)
    {
        var zone = await visible.All.Where(task => task.Id == taskId)
            .Select(task => task.Parcel.Property.TimeZone).SingleOrDefaultAsync(cancellation);
        if (zone is null)
            return Change.NotFound<Incident>();
        var now = clock.GetCurrentInstant();
        var faults = new FieldFaults();
        var fields = form.Check(now, faults);
        if (form.CorrectsId is { } corrected && !await db.Incidents.AnyAsync(
            row => row.Id == corrected && row.TaskId == taskId, cancellation))
        {
            faults.Add("correctsId", corrected, "the id of an entry of the same task, or nothing");
        }
        if (faults.Any)
            return Change.Refused<Incident>(faults);

        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var day = fields.HappenedAt.InZone(DateTimeZoneProviders.Tzdb[zone]).Date;
        var decision = await DecisionAsync(taskId, day, fields.HappenedAt, cancellation);
        // Who records it late records what was known and what stood at that hour, not what is known by now.
        var then = new KnownThen(
            fields.HappenedAt, decision is null ? null : await decisions.PacksAsync(decision, cancellation));
        if (await windows.EvaluateAsync(taskId, new(day, 1), then, cancellation) is not { } evaluated)
            return Change.NotFound<Incident>();
        var incident = new Incident
        {
            TaskId = taskId,
            CorrectsId = form.CorrectsId,
            Kind = fields.Kind,
            HappenedAt = fields.HappenedAt,
            Day = day,
            WhatHappened = fields.WhatHappened,
            WhoWasTold = fields.WhoWasTold,
            Conditions = JsonSerializer.Serialize(
                DayWords.Stored(() => IncidentConditions.Of(evaluated, fields.HappenedAt)), json.Value.SerializerOptions),
            DecisionHash = decision?.Hash,
            RecordedById = by.PersonId,
            RecordedBy = by.Name,
            RecordedAt = now,
        };
        db.Add(incident);
        await audit.AddAsync(AuditKind.Incident, incident.Id, null, IncidentView.Of(incident), cancellation);
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return Change.Done(incident);
    }

    /// <summary>The decision about the day that stood at a moment.</summary>
    private Task<Decision?> DecisionAsync(Guid taskId, LocalDate day, Instant at, CancellationToken cancellation) =>
        db.Decisions.AsNoTracking().Where(decision => decision.TaskId == taskId && decision.EvaluatedAt <= at
                && decision.FirstDay <= day && decision.LastDay >= day)
            .OrderByDescending(decision => decision.EvaluatedAt).FirstOrDefaultAsync(cancellation);
}
