using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Chances;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Parcels;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Weather;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Records;

/// <summary>A parcel and all that is known of its weather.</summary>
/// <param name="Parcel">Its name.</param>
/// <param name="Property">The name of its property.</param>
/// <param name="Zone">Whose days are meant.</param>
/// <param name="Now">The time of asking.</param>
/// <param name="Place">Where it lies.</param>
/// <param name="Source">The stations.</param>
/// <param name="Record">The record; null without a station.</param>
/// <param name="Forecast">The forecast; null without a recent one.</param>
/// <param name="Signals">The days of the fan.</param>
/// <param name="Ensemble">What may follow them.</param>
/// <param name="Tasks">The tasks to be done on the parcel.</param>
/// <param name="Limits">The temperatures at which rules change what they say of them.</param>
public sealed record RecordInput(
    string Parcel, string Property, DateTimeZone Zone, Instant Now, PlacedParcel Place, WeatherSource Source, ParcelRecord? Record,
    Engine.Weather.Forecast? Forecast, SignalSet Signals, Ensemble Ensemble, IReadOnlyList<TaskSummary> Tasks,
    IReadOnlyList<TemperatureLimit> Limits)
{
    public LocalDate Today => Now.InZone(Zone).Date;
}

/// <summary>Reads what the page of a parcel's weather shows.</summary>
public sealed class RecordReader(
    VisibleProperties properties, VisibleTasks tasks, ParcelSources sources, ParcelRecords records,
    WeatherRecords weather, TaskEvaluator evaluator, IClock clock)
{
    /// <returns>Null when the caller sees no such parcel.</returns>
    public async Task<RecordInput?> ReadAsync(Guid id, CancellationToken cancellation)
    {
        var found = await properties.All.SelectMany(property => property.Parcels, (property, parcel) => new
        {
            parcel.Id,
            parcel.Name,
            PropertyName = property.Name,
            property.TimeZone,
            parcel.Latitude,
            parcel.Longitude,
            parcel.ElevationM,
        }).SingleOrDefaultAsync(parcel => parcel.Id == id, cancellation);
        if (found is null)
            return null;
        var zone = DateTimeZoneProviders.Tzdb[found.TimeZone];
        var now = clock.GetCurrentInstant();
        var today = now.InZone(zone).Date;
        var parcel = new PlacedParcel(id, new(found.Latitude, found.Longitude, found.ElevationM));
        var source = (await sources.OfAsync([parcel], cancellation))[id];
        var record = await records.OfAsync(source, now, cancellation);
        var forecast = source.Primary is { } station
            ? await weather.ForecastAsync(station.Id, now, zone, cancellation)
            : null;
        var observed = record?.Series ?? DailySeries.Empty;
        var signals = SignalSetBuilder.Build(
            source.Point, FanChart.DaysAround(today), observed, forecast, zone, WorkShift.Default, AlertReport.None);
        var planned = await evaluator.ReadAsync(
            tasks.All.Where(task => task.ParcelId == id && task.CompletedOn == null), new DaySpan(today, 1),
            cancellation);
        return new(
            found.Name, found.PropertyName, zone, now, parcel, source, record, forecast, signals,
            Ensemble.Of(new(observed), signals, forecast, source.Point.LatitudeDeg),
            [.. planned.Select(task => task.Task)],
            planned.Count == 0
                ? []
                : TemperatureLimits.Of(planned[0].Weather.Rules.Packs, [.. planned.Select(task => task.Facts)]));
    }
}
