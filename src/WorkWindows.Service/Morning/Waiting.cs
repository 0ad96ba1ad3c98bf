using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Crews;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Morning;

/// <summary>Something that waits for a consultant.</summary>
/// <param name="Says">What it is.</param>
/// <param name="Address">Where it is seen to.</param>
/// <param name="IsUrgent">Whether somebody may be in danger, or was not told.</param>
public sealed record Waiting(string Says, string Address, bool IsUrgent = false);

/// <summary>Counts what waits for a consultant, in one query.</summary>
public sealed class WaitingReader(WorkWindowsDb db, IClock clock)
{
    /// <summary>Certificates are renewed so many days ahead: common practice, no source.</summary>
    private const int DaysOfCertificates = 30;

    public async Task<IReadOnlyList<Waiting>> ReadAsync(LocalDate today, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var soon = today.PlusDays(DaysOfCertificates);
        var counts = await db.Organizations.Select(_ => new
        {
            Late = db.CrewWatches.Count(watch => watch.EndedAt == null && watch.DueAt < now),
            FirstLate = db.CrewWatches.Where(watch => watch.EndedAt == null && watch.DueAt < now)
                .OrderBy(watch => watch.DueAt).Select(watch => (Guid?)watch.TaskId).FirstOrDefault(),
            Undelivered = db.Messages.Count(message =>
                message.GivenUp == GivenUp.Failed || message.GivenUp == GivenUp.AddressBounces),
            Plans = db.CrewPlans.Count(plan => plan.Status == PlanStatus.Proposed),
            Overdue = db.PlannedTasks.Count(task => task.CompletedOn == null && task.Deadline < today),
            Certificates = db.Certificates.Count(held => held.ValidUntil < soon),
            WithoutWeather = db.Properties.Count(property => property.Parcels.Any(parcel =>
                !db.ParcelStations.Any(station => station.ParcelId == parcel.Id))),
        }).SingleAsync(cancellation);
        return
        [
            .. Told(counts.Late, "crew is late to check in", "crews are late to check in", $"/tasks/{counts.FirstLate}/watch", isUrgent: true),
            .. Told(counts.Undelivered, "message reached nobody", "messages reached nobody", "/messages", isUrgent: true),
            .. Told(counts.Plans, "crew plan waits to be published", "crew plans wait to be published", "/plan"),
            .. Told(counts.Overdue, "task is past its deadline", "tasks are past their deadline", "/tasks?sort=closing"),
            .. Told(counts.Certificates, "certificate runs out within 30 days", "certificates run out within 30 days", "/crews#certificates"),
            .. Told(counts.WithoutWeather, "property has land without a weather station", "properties have land without a weather station", "/week"),
        ];
    }

    private static IEnumerable<Waiting> Told(int count, string one, string many, string address, bool isUrgent = false) =>
        count == 0 ? [] : [new(DayWords.Count(count, one, many), address, isUrgent)];
}
