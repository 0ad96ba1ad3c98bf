namespace WorkWindows.Engine.Weather;

/// <summary>A place that weather is computed for.</summary>
public sealed record WeatherPoint
{
    /// <param name="name">The point's identifier, for people and for the decision record.</param>
    /// <param name="latitudeDeg">WGS 84, north positive.</param>
    /// <param name="longitudeDeg">WGS 84, east positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">The position is not on the earth.</exception>
    public WeatherPoint(string name, double latitudeDeg, double longitudeDeg)
    {
        if (!(Math.Abs(latitudeDeg) <= 90))
            throw new ArgumentOutOfRangeException(nameof(latitudeDeg), latitudeDeg, "A latitude is -90 to 90 degrees.");
        if (!(Math.Abs(longitudeDeg) <= 180))
        {
            throw new ArgumentOutOfRangeException(
                nameof(longitudeDeg), longitudeDeg, "A longitude is -180 to 180 degrees.");
        }
        (Name, LatitudeDeg, LongitudeDeg) = (name, latitudeDeg, longitudeDeg);
    }

    public string Name { get; }

    public double LatitudeDeg { get; }

    public double LongitudeDeg { get; }
}
