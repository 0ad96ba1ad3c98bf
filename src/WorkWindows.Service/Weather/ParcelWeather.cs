using System.Globalization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using UnitsNet;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>The stations that a parcel's weather comes from.</summary>
public sealed class ParcelWeather(WorkWindowsDb db)
{
    public async Task<IReadOnlyList<StationLine>> SourcesAsync(Guid parcelId, CancellationToken cancellation) =>
        await db.ParcelStations.AsNoTracking()
            .Where(link => link.ParcelId == parcelId).OrderBy(link => link.Purpose)
            .Select(link => new StationLine(
                link.Purpose, link.Station.Name, link.Station.GhcnId, link.DistanceM, link.ElevationDifferenceM,
                db.StationReadings.Where(reading => reading.StationId == link.StationId)
                    .Min(reading => (LocalDate?)reading.Date),
                db.StationReadings.Where(reading => reading.StationId == link.StationId)
                    .Max(reading => (LocalDate?)reading.Date)))
            .ToListAsync(cancellation);
}

/// <summary>A station as people are told of it.</summary>
public sealed record StationLine(
    StationPurpose Purpose, string Name, string GhcnId, double DistanceM, double? ElevationDifferenceM,
    LocalDate? FirstReading, LocalDate? LastReading)
{
    /// <summary>As in '3.4 miles away, 120 ft higher than the parcel'.</summary>
    public string Place
    {
        get
        {
            var miles = Length.FromMeters(DistanceM).Miles.ToString("0.#", CultureInfo.InvariantCulture);
            return ElevationDifferenceM is { } difference
                ? $"{miles} miles away, {Height(Math.Round(Length.FromMeters(difference).Feet))}"
                : $"{miles} miles away, elevation not known";
        }
    }

    private static string Height(double feet) => feet switch
    {
        0 => "as high as the parcel",
        > 0 => $"{feet} ft higher than the parcel",
        _ => $"{-feet} ft lower than the parcel",
    };
}
