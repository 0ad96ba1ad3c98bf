using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Windows;

/// <summary>Evaluates planned tasks from what is stored. Signals are computed once a weather point.</summary>
public sealed class TaskEvaluator(
    WorkWindowsDb db, WeatherRecords weather, ParcelSources sources, ParcelRecords blends, PackShelf shelf,
    PropertyRecords records, IClock clock)
{
    /// <summary>Evaluates tasks over the given days, with lead-in days before them.</summary>
    /// <param name="tasks">The tasks; what the caller may see of them is the caller's to restrict.</param>
    /// <param name="days">The days asked for, in each property's own zone.</param>
    /// <param name="cancellation">Ends the queries.</param>
    /// <returns>In the order of property, parcel and task key.</returns>
    public async Task<IReadOnlyList<EvaluatedTask>> EvaluateAsync(
        IQueryable<PlannedTask> tasks, DaySpan days, CancellationToken cancellation) =>
        [.. (await ReadAsync(tasks, days, cancellation)).Select(task => task.Evaluated())];

    /// <summary>Reads all that an evaluation of tasks rests on.</summary>
    /// <inheritdoc cref="EvaluateAsync"/>
    public Task<IReadOnlyList<TaskInput>> ReadAsync(
        IQueryable<PlannedTask> tasks, DaySpan days, CancellationToken cancellation) =>
        ReadAsync(tasks, days, new(clock.GetCurrentInstant()), cancellation);

    /// <summary>The same as it was known at another time.</summary>
    /// <inheritdoc cref="EvaluateAsync"/>
    public async Task<IReadOnlyList<TaskInput>> ReadAsync(
        IQueryable<PlannedTask> tasks, DaySpan days, KnownThen then, CancellationToken cancellation)
    {
        var rows = await RowsAsync(tasks, days.First, cancellation);
        if (rows.Count == 0)
            return [];
        var stations = await sources.OfAsync([.. rows.Select(row => row.Parcel).DistinctBy(parcel => parcel.Id)], cancellation);
        var properties = rows.Select(row => row.Task.PropertyId).Distinct().ToList();
        var packs = then.Packs is { } inForce ? PackStacks.Of(inForce) : await shelf.ReadAsync(cancellation);
        var shift = rows[0].Shift;
        var span = LeadIn.Before(days, packs.OfAny(properties));
        var said = await records.ReadAsync(properties, span, then.At, cancellation);

        var now = then.At;
        var outlooks = await weather.OutlooksAsync(
            [.. rows.Select(row => (stations[row.Task.ParcelId].Primary?.Id, row.Task.Zone)).Distinct()], now, span.First, cancellation);
        var points = new Dictionary<(WeatherSource, DateTimeZone), PointWeather>();
        var places = new Dictionary<(PointWeather, Guid Property), PropertyWeather>();
        var inputs = new List<TaskInput>(rows.Count);
        foreach (var row in rows)
        {
            var source = stations[row.Task.ParcelId];
            if (!points.TryGetValue((source, row.Task.Zone), out var point))
            {
                var outlook = outlooks[(source.Primary?.Id, row.Task.Zone)];
                var observed = await blends.ObservedAsync(source, now, cancellation);
                var signals = SignalSetBuilder.Build(
                    source.Point, span, observed, outlook.Forecast, row.Task.Zone, shift, outlook.Alerts);
                points[(source, row.Task.Zone)] = point = new(
                    signals, observed, outlook.Forecast, source.Point.LatitudeDeg);
            }
            // Only a property with observations or packs of its own needs rules of its own.
            var property = row.Task.PropertyId;
            var key = (point, said.HasSeen(property) || packs.HasOwn(property) ? property : Guid.Empty);
            if (!places.TryGetValue(key, out var place))
            {
                places[key] = place = new(
                    point, packs.Of(property), said.LeafOuts(property), [.. said.Readings(property)]);
            }
            inputs.Add(new(row.Task, row.Facts with { Overrides = said.Overrides(row.Task) }, place, row.Parcel, source));
        }
        return inputs;
    }

    private async Task<List<TaskRow>> RowsAsync(
        IQueryable<PlannedTask> tasks, LocalDate firstDay, CancellationToken cancellation)
    {
        // A session sees its own organization alone.
        var rows = await tasks.AsNoTracking().SelectMany(task => db.Organizations, (task, organization) => new { task, organization })
            .OrderBy(row => row.task.Parcel.Property.Name).ThenBy(row => row.task.Parcel.Name).ThenBy(row => row.task.Key)
            .Select(row => new
            {
                Task = row.task,
                Organization = row.organization.Name,
                row.organization.ShiftStart,
                row.organization.ShiftEnd,
                row.task.Parcel.Name,
                row.task.Parcel.Latitude,
                row.task.Parcel.Longitude,
                row.task.Parcel.ElevationM,
                row.task.Parcel.Stand,
                row.task.Parcel.SiteFlags,
                row.task.Parcel.PropertyId,
                PropertyName = row.task.Parcel.Property.Name,
                row.task.Parcel.Property.TimeZone,
                row.task.Parcel.Property.LandownerId,
                row.task.Parcel.Property.State,
                row.task.Parcel.Property.CountyFips,
                Leads = db.Bookings.Where(booking => booking.TaskId == row.task.Id && booking.Day >= firstDay)
                    .Select(booking => new { booking.Day, booking.Crew.LeadId }).ToList(),
                WaitsFor = row.task.Prerequisites
                    .Join(db.PlannedTasks, link => link.PrerequisiteId, first => first.Id, (link, first) => first)
                    .Where(first => first.CompletedOn == null).OrderBy(first => first.Key)
                    .Select(first => first.PracticeId).ToList(),
            })
            .ToListAsync(cancellation);
        return
        [
            .. rows.Select(row =>
            {
                var practice = PracticeCatalogue.Find(row.Task.PracticeId)
                    ?? throw new InvalidOperationException(
                        $"Task {row.Task.Id} has the practice {row.Task.PracticeId}.");
                return new TaskRow(
                    new(row.Task.Id, row.Task.Key, practice, row.Task.ParcelId, row.Name, row.PropertyId,
                        row.PropertyName, DateTimeZoneProviders.Tzdb[row.TimeZone], row.LandownerId,
                        row.Task.CrewLeadId, row.Task.CrewSize, row.Task.Quantity, row.Task.QuantityUnit,
                        row.Task.Deadline, row.Task.ScheduledOn, row.Task.CompletedOn)
                    {
                        NotBefore = row.Task.NotBefore,
                        BookedLeads = row.Leads.ToDictionary(booking => booking.Day, booking => booking.LeadId),
                        WaitsFor = [.. row.WaitsFor.Select(id => PracticeCatalogue.Find(id)?.Name ?? id)],
                    },
                    new(row.Task.Id.ToString(), practice, row.State, row.CountyFips, Groups(row.Stand),
                        [.. row.SiteFlags])
                    {
                        Organization = row.Organization,
                        Place = new(row.Latitude, row.Longitude),
                    },
                    new(row.Task.ParcelId, new(row.Latitude, row.Longitude, row.ElevationM)),
                    new(row.ShiftStart, row.ShiftEnd));
            }),
        ];
    }

    /// <summary>A stand without rows has not been inventoried.</summary>
    private static ImmutableSortedSet<SpeciesGroup>? Groups(IReadOnlyList<StandRow>? stand) =>
        stand is null or []
            ? null
            : [.. stand.Select(row => SpeciesCatalogue.Find(row.Species)?.Group
                ?? throw new InvalidOperationException($"The species catalogue has no {row.Species}."))];

    private sealed record TaskRow(TaskSummary Task, TaskFacts Facts, PlacedParcel Parcel, WorkShift Shift);
}

/// <summary>What an evaluation may rest on.</summary>
/// <param name="At">What became known later does not count.</param>
/// <param name="Packs">The rule packs that stood; null for those that stand now.</param>
public sealed record KnownThen(Instant At, ImmutableArray<RulePack>? Packs = null);
