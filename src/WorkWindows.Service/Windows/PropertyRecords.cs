using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Signals;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Windows;

/// <summary>Reads what people have said of properties: what they saw there, and the exceptions they made.</summary>
public sealed class PropertyRecords(WorkWindowsDb db)
{
    /// <param name="properties">The properties.</param>
    /// <param name="span">The days of which it matters.</param>
    /// <param name="asOf">What was said or taken back later does not count; what was deleted since is not known.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<SaidOfProperties> ReadAsync(
        IReadOnlyCollection<Guid> properties, DaySpan span, Instant asOf, CancellationToken cancellation)
    {
        var leafOuts = await db.SiteObservations.AsNoTracking()
            .Where(seen => properties.Contains(seen.PropertyId) && seen.Kind == SiteObservation.LeafOut
                && seen.RecordedAt <= asOf)
            .ToListAsync(cancellation);
        var readings = await db.SiteReadings.AsNoTracking()
            .Where(reading => properties.Contains(reading.PropertyId)
                && reading.SeenOn <= span.Last && reading.Until >= span.First && reading.RecordedAt <= asOf)
            .OrderBy(reading => reading.SeenOn).ThenBy(reading => reading.RecordedAt).ThenBy(reading => reading.Id)
            .ToListAsync(cancellation);
        var exceptions = await db.RuleOverrides.AsNoTracking()
            .Where(row => properties.Contains(row.PropertyId)
                && row.MadeAt <= asOf && (row.WithdrawnAt == null || row.WithdrawnAt > asOf)
                && row.FirstDay <= span.Last && row.LastDay >= span.First)
            .OrderBy(row => row.MadeAt).ThenBy(row => row.Id)
            .Select(row => new Excepted(
                row.PropertyId, row.ParcelId, row.TaskId,
                new(row.RuleId, row.FirstDay, row.LastDay, row.MadeBy.DisplayName, row.Reason)))
            .ToListAsync(cancellation);
        return new(
            leafOuts.ToLookup(
                seen => seen.PropertyId,
                seen => new SeasonEvent(SeasonEventKind.LeafOut, seen.ObservedOn, Basis.SiteObservation)),
            readings.ToLookup(
                reading => reading.PropertyId,
                reading => new SiteReading(reading.Signal, reading.Value, reading.SeenOn, reading.Until)),
            exceptions.ToLookup(exception => exception.PropertyId));
    }

    /// <param name="PropertyId">The property it is for.</param>
    /// <param name="ParcelId">The one parcel, or null for all.</param>
    /// <param name="TaskId">The one task, or null for all.</param>
    /// <param name="Override">What it says.</param>
    internal sealed record Excepted(Guid PropertyId, Guid? ParcelId, Guid? TaskId, RuleOverride Override);
}

/// <summary>What people have said of properties.</summary>
public sealed class SaidOfProperties
{
    private readonly ILookup<Guid, SeasonEvent> _leafOuts;
    private readonly ILookup<Guid, SiteReading> _readings;
    private readonly ILookup<Guid, PropertyRecords.Excepted> _exceptions;

    internal SaidOfProperties(
        ILookup<Guid, SeasonEvent> leafOuts, ILookup<Guid, SiteReading> readings,
        ILookup<Guid, PropertyRecords.Excepted> exceptions) =>
        (_leafOuts, _readings, _exceptions) = (leafOuts, readings, exceptions);

    /// <summary>
    /// Whether anything was seen on a property, so that its signals are not those of its weather point.
    /// </summary>
    public bool HasSeen(Guid property) => _leafOuts.Contains(property) || _readings.Contains(property);

    /// <summary>One day a year at most.</summary>
    public IReadOnlyCollection<SeasonEvent> LeafOuts(Guid property) => [.. _leafOuts[property]];

    /// <summary>The older ones first.</summary>
    public IEnumerable<SiteReading> Readings(Guid property) => _readings[property];

    /// <summary>The exceptions that are for a task, its parcel or its property.</summary>
    public ImmutableArray<RuleOverride> Overrides(TaskSummary task) =>
    [
        .. _exceptions[task.PropertyId]
            .Where(exception => (exception.ParcelId ?? task.ParcelId) == task.ParcelId
                && (exception.TaskId ?? task.Id) == task.Id)
            .Select(exception => exception.Override),
    ];
}
