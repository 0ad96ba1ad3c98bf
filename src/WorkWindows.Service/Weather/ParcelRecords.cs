using Microsoft.Extensions.Caching.Memory;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Parcels;

namespace WorkWindows.Service.Weather;

/// <summary>Records of places, each made once for the records of its stations as they are.</summary>
public sealed class ParcelRecords(WeatherRecords weather, IMemoryCache cache)
{
    private static readonly TimeSpan CachedFor = TimeSpan.FromHours(1);

    /// <summary>The record of a place; of wind only what its own station has. Null without a station.</summary>
    public async Task<ParcelRecord?> OfAsync(WeatherSource source, CancellationToken cancellation)
    {
        if (source.Primary is not { } primary)
            return null;
        if (cache.TryGetValue((nameof(ParcelRecord), source.RecordKey), out ParcelRecord? cached))
            return cached!;
        var group = await GroupAsync(source.Temperature, cancellation);
        var record = group is null
            ? ParcelRecord.Of(await RecordAsync(primary, cancellation), source.Place)
            : ParcelRecord.Of(group, primary.GhcnId, source.Place);
        return cache.Set((nameof(ParcelRecord), source.RecordKey), record, CachedFor);
    }

    /// <summary>The values that rules see: those of the record, and wind from its station.</summary>
    public async Task<DailySeries> ObservedAsync(WeatherSource source, CancellationToken cancellation)
    {
        var observed = await OfAsync(source, cancellation) is { } record ? record.Series : DailySeries.Empty;
        if (source.Wind is not { } wind || wind.Id == source.Primary?.Id)
            return observed;
        return observed.WithElements(
            await weather.ObservedAsync(wind, cancellation), DailyElement.WindMps, DailyElement.GustMps);
    }

    /// <summary>Stations looked at together; null when none of them has a temperature.</summary>
    public async Task<StationGroup?> GroupAsync(IEnumerable<Station> stations, CancellationToken cancellation)
    {
        var members = stations.OrderBy(station => station.Id).ToList();
        var key = (nameof(StationGroup), string.Join(' ', members.Select(station => $"{station.Id}:{station.RecordVersion}")));
        if (cache.TryGetValue(key, out StationGroup? cached))
            return cached;
        var records = new List<RecordStation>(members.Count);
        foreach (var station in members)
            records.Add(await RecordAsync(station, cancellation));
        return cache.Set(key, StationGroup.Of(records), CachedFor);
    }

    private async Task<RecordStation> RecordAsync(Station station, CancellationToken cancellation) =>
        new(station.Described(), await weather.CheckedAsync(station, cancellation));
}
