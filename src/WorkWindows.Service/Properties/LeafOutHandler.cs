using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Audit;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Properties;

/// <summary>Keeps what was seen of leaf-out on properties, one day a year.</summary>
public sealed class LeafOutHandler(WorkWindowsDb db, AuditLog audit, PromptLook look, IClock clock)
{
    private const int LongestNote = 1000;
    private const int FirstYear = 1900;

    /// <param name="propertyId">The property.</param>
    /// <param name="year">The year it was seen in.</param>
    /// <param name="observedOn">The day; not to come yet in the property's time zone.</param>
    /// <param name="note">Who saw what, or null.</param>
    /// <param name="recordedById">The person who says so; null for a machine.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<Change<SiteObservation>> PutAsync(
        Guid propertyId, int year, LocalDate? observedOn, string? note, Guid? recordedById,
        CancellationToken cancellation)
    {
        if (await db.Properties.SingleOrDefaultAsync(row => row.Id == propertyId, cancellation) is not { } property)
            return Change.NotFound<SiteObservation>();
        var now = clock.GetCurrentInstant();
        var today = now.InZone(DateTimeZoneProviders.Tzdb[property.TimeZone]).Date;
        var faults = new FieldFaults();
        if (year < FirstYear || year > today.Year)
            faults.Add("year", year, $"a year from {FirstYear} to {today.Year}");
        else if (observedOn?.Year != year || observedOn > today)
            faults.Add("observedOn", observedOn, $"a day of {year} that is not to come yet");
        var trimmed = faults.Optional(
            "note", note, text => text.Length <= LongestNote, $"at most {LongestNote} characters");
        if (faults.Any)
            return Change.Refused<SiteObservation>(faults);

        var observation = await FindAsync(propertyId, year, cancellation);
        if (observation is not null && (observation.ObservedOn, observation.Note) == (observedOn!.Value, trimmed))
            return Change.Done(observation);
        var before = observation is null ? null : LeafOutSeen.Of(observation);
        if (observation is null)
        {
            observation = new SiteObservation
            {
                PropertyId = propertyId,
                Kind = SiteObservation.LeafOut,
                ObservedOn = observedOn!.Value,
                RecordedAt = now,
            };
            db.Add(observation);
        }
        (observation.ObservedOn, observation.Note) = (observedOn!.Value, trimmed);
        (observation.RecordedAt, observation.RecordedById) = (now, recordedById);
        await audit.AddAsync(AuditKind.LeafOut, observation.Id, before, LeafOutSeen.Of(observation), cancellation);
        look.Note();
        await db.SaveChangesAsync(cancellation);
        look.Enqueue();
        return Change.Done(observation);
    }

    public async Task<Change<SiteObservation>> DeleteAsync(Guid propertyId, int year, CancellationToken cancellation)
    {
        if (await FindAsync(propertyId, year, cancellation) is not { } observation)
            return Change.NotFound<SiteObservation>();
        db.Remove(observation);
        await audit.AddAsync(AuditKind.LeafOut, observation.Id, LeafOutSeen.Of(observation), null, cancellation);
        look.Note();
        await db.SaveChangesAsync(cancellation);
        look.Enqueue();
        return Change.Done(observation);
    }

    private Task<SiteObservation?> FindAsync(Guid propertyId, int year, CancellationToken cancellation) =>
        db.SiteObservations.SingleOrDefaultAsync(
            seen => seen.PropertyId == propertyId && seen.Kind == SiteObservation.LeafOut && seen.ObservedOn.Year == year,
            cancellation);
}

/// <summary>What the audit keeps of a leaf-out that was seen.</summary>
internal sealed record LeafOutSeen(
    Guid PropertyId, LocalDate ObservedOn, string? Note, Guid? RecordedById, Instant RecordedAt)
{
    public static LeafOutSeen Of(SiteObservation seen) =>
        new(seen.PropertyId, seen.ObservedOn, seen.Note, seen.RecordedById, seen.RecordedAt);
}
