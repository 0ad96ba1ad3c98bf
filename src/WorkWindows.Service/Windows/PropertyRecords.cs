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
    private const string LeafOut = "leaf-out", Reading = "reading", Exception = "exception";

    /// <param name="properties">The properties.</param>
    /// <param name="span">The days of which it matters.</param>
    /// <param name="asOf">What was said or taken back later does not count; what was deleted since is not known.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<SaidOfProperties> ReadAsync(
        IReadOnlyCollection<Guid> properties, DaySpan span, Instant asOf, CancellationToken cancellation)
    {
        Guid[] ids = [.. properties];
        // One question for three tables: pages ask it of all the land that they show.
        var said = await db.Database.SqlQuery<Said>($"""
            select {LeafOut} as what, property_id, null::uuid as parcel_id, null::uuid as task_id, null as name,
              null::double precision as value, observed_on as first_day, observed_on as last_day, null as made_by,
              null as reason, recorded_at as said_at, id
            from site_observations
            where property_id = any({ids}) and kind = {SiteObservation.LeafOut} and recorded_at <= {asOf}
            union all
            select {Reading}, property_id, null, null, signal, value, seen_on, until, null, null, recorded_at, id
            from site_readings
            where property_id = any({ids}) and seen_on <= {span.Last} and until >= {span.First} and recorded_at <= {asOf}
            union all
            select {Exception}, property_id, parcel_id, task_id, rule_id, null, first_day, last_day, person.display_name,
              reason, made_at, excepted.id
            from rule_overrides excepted join people person on person.id = excepted.made_by_id
            where property_id = any({ids}) and made_at <= {asOf} and (withdrawn_at is null or withdrawn_at > {asOf})
              and first_day <= {span.Last} and last_day >= {span.First}
            """).ToListAsync(cancellation);
        return new(
            said.Where(one => one.What == LeafOut).ToLookup(
                seen => seen.PropertyId,
                seen => new SeasonEvent(SeasonEventKind.LeafOut, seen.FirstDay, Basis.SiteObservation)),
            said.Where(one => one.What == Reading)
                .OrderBy(reading => reading.FirstDay).ThenBy(reading => reading.SaidAt).ThenBy(reading => reading.Id)
                .ToLookup(reading => reading.PropertyId, reading => new SiteReading(
                    Enum.Parse<SignalKind>(reading.Name!), reading.Value!.Value, reading.FirstDay, reading.LastDay)),
            said.Where(one => one.What == Exception).OrderBy(exception => exception.SaidAt).ThenBy(exception => exception.Id)
                .ToLookup(exception => exception.PropertyId, exception => new Excepted(
                    exception.ParcelId, exception.TaskId,
                    new(exception.Name!, exception.FirstDay, exception.LastDay, exception.MadeBy!, exception.Reason!))));
    }

    /// <summary>What somebody said: what they saw, what they read, or that a rule does not count.</summary>
    private sealed record Said(
        string What, Guid PropertyId, Guid? ParcelId, Guid? TaskId, string? Name, double? Value, LocalDate FirstDay,
        LocalDate LastDay, string? MadeBy, string? Reason, Instant SaidAt, Guid Id);

    /// <param name="ParcelId">The one parcel, or null for all.</param>
    /// <param name="TaskId">The one task, or null for all.</param>
    /// <param name="Override">What it says.</param>
    internal sealed record Excepted(Guid? ParcelId, Guid? TaskId, RuleOverride Override);
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
