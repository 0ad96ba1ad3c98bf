using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Which stations are asked for, and what a station's identifier tells.</summary>
public static class Stations
{
    /// <summary>The stations that parcels take their temperatures from: those with forecasts and alerts.</summary>
    public static IQueryable<Station> WithForecast(WorkWindowsDb db) => db.Stations.AsNoTracking()
        .Where(station => db.ParcelStations.Any(
            link => link.StationId == station.Id && link.Purpose == StationPurpose.Temperature))
        .OrderBy(station => station.GhcnId);

    /// <summary>
    /// Stations of the United States read whole °F, whole mph and inches (NOAA, GHCN-Daily documentation); the first
    /// two characters of the identifier are the country.
    /// </summary>
    public static bool ReadUsUnits(string ghcnId) => ghcnId.StartsWith("US", StringComparison.Ordinal);
}
