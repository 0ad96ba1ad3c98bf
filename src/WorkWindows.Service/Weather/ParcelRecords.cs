using Microsoft.Extensions.Caching.Memory;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Parcels;

namespace WorkWindows.Service.Weather;

/// <summary>Records of places, each made once for the records of its stations as they are.</summary>
public sealed class ParcelRecords(WeatherRecords weather, IMemoryCache cache)
{
    private static readonly TimeSpan CachedFor = TimeSpan.FromHours(1);

    /// <summary>
    /// The record of a place as it was known on a moment; of wind only what its own station has. Null without a
    /// station.
    /// </summary>
    public async Task<ParcelRecord?> OfAsync(WeatherSource source, Instant asOf, CancellationToken cancellation)
    {
        if (source.Primary is not { } primary)
            return null;
        var key = (nameof(ParcelRecord), source.RecordKey, PastMoment(source.Temperature, asOf));
        if (cache.TryGetValue(key, out ParcelRecord? cached))
            return cached!;
        var group = await GroupAsync(source.Temperature, asOf, cancellation);
        var record = group is null
            ? ParcelRecord.Of(await RecordAsync(primary, asOf, cancellation), source.Place)
            : ParcelRecord.Of(group, primary.GhcnId, source.Place);
        return cache.Set(key, record, CachedFor);
    }

    /// <summary>The values that rules see: those of the record, and wind from its station.</summary>
    public async Task<DailySeries> ObservedAsync(WeatherSource source, Instant asOf, CancellationToken cancellation)
    {
        var observed = await OfAsync(source, asOf, cancellation) is { } record ? record.Series : DailySeries.Empty;
        if (source.Wind is not { } wind || wind.Id == source.Primary?.Id)
            return observed;
        return observed.WithElements(
            await weather.ObservedAsync(wind, asOf, cancellation), DailyElement.WindMps, DailyElement.GustMps);
    }

    /// <summary>Stations looked at together; null when none of them has a temperature.</summary>
    public async Task<StationGroup?> GroupAsync(
        IEnumerable<Station> stations, Instant asOf, CancellationToken cancellation)
    {
        var members = stations.OrderBy(station => station.Id).ToList();
        var key = (
            nameof(StationGroup), string.Join(' ', members.Select(station => $"{station.Id}:{station.RecordVersion}")),
            PastMoment(members, asOf));
        if (cache.TryGetValue(key, out StationGroup? cached))
            return cached;
        var records = new List<RecordStation>(members.Count);
        foreach (var station in members)
            records.Add(await RecordAsync(station, asOf, cancellation));
        return cache.Set(key, StationGroup.Of(records), CachedFor);
    }

    /// <summary>
    /// The moment where it is before a change of a record; null where what was known then is known now.
    /// </summary>
    private static Instant? PastMoment(IEnumerable<Station> stations, Instant asOf) =>
        stations.Any(station => asOf < station.RecordChangedAt) ? asOf : null;

    private async Task<RecordStation> RecordAsync(Station station, Instant asOf, CancellationToken cancellation) =>
        new(station.Described(), await weather.CheckedAsync(station, asOf, cancellation));
}
