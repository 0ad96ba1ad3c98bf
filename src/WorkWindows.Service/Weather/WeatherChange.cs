namespace WorkWindows.Service.Weather;

/// <summary>What has changed of that which tasks are evaluated from.</summary>
/// <param name="Records">Stations whose record changed.</param>
/// <param name="Outlooks">Stations whose forecast or alerts changed.</param>
/// <param name="Parcels">Parcels that take their weather from other stations, or are not as they were before.</param>
public sealed record WeatherChange(
    IReadOnlyCollection<Guid> Records, IReadOnlyCollection<Guid> Outlooks, IReadOnlyCollection<Guid> Parcels)
{
    public static WeatherChange OfRecords(IReadOnlyCollection<Guid> stations) => new(stations, [], []);

    public static WeatherChange OfOutlooks(IReadOnlyCollection<Guid> stations) => new([], stations, []);

    public static WeatherChange OfParcels(IReadOnlyCollection<Guid> parcels) => new([], [], parcels);

    public bool IsEmpty => Records.Count == 0 && Outlooks.Count == 0 && Parcels.Count == 0;
}
