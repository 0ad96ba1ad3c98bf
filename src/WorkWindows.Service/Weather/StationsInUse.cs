namespace WorkWindows.Service.Weather;

/// <summary>The stations that each parcel of an organization took its weather from on a moment.</summary>
/// <param name="sources">Where each parcel's weather comes from.</param>
public sealed class StationsInUse(IReadOnlyDictionary<Guid, WeatherSource> sources)
{
    private readonly Dictionary<Guid, string> stations =
        sources.ToDictionary(parcel => parcel.Key, parcel => NamesOf(parcel.Value));

    /// <returns>The parcels that use other stations than before, or were not there.</returns>
    public IReadOnlyCollection<Guid> ParcelsUnlike(StationsInUse before) =>
        [.. stations.Where(parcel => before.stations.GetValueOrDefault(parcel.Key) != parcel.Value)
            .Select(parcel => parcel.Key)];

    private static string NamesOf(WeatherSource source) =>
        $"{string.Join(' ', source.Temperature.Select(station => station.Id))} wind {source.Wind?.Id}";
}
