using System.Globalization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using UnitsNet;
using WorkWindows.Engine.Weather.Parcels;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>The stations that a parcel's weather comes from.</summary>
public sealed class ParcelWeather(WorkWindowsDb db, ParcelSources sources, ParcelRecords records, IClock clock)
{
    /// <summary>Temperatures first: the parcel's own station, then those that it is blended with; wind last.</summary>
    public async Task<IReadOnlyList<StationLine>> SourcesAsync(Guid parcelId, CancellationToken cancellation)
    {
        var own = await db.ParcelStations.AsNoTracking()
            .Where(link => link.ParcelId == parcelId).OrderBy(link => link.Purpose)
            .Select(link => new StationLine(
                link.Purpose, link.Station.Name, link.Station.GhcnId, link.DistanceM, link.ElevationDifferenceM,
                db.StationReadings.Where(reading => reading.StationId == link.StationId)
                    .Min(reading => (LocalDate?)reading.Date),
                db.StationReadings.Where(reading => reading.StationId == link.StationId)
                    .Max(reading => (LocalDate?)reading.Date)))
            .ToListAsync(cancellation);
        if (own.Find(line => line.Purpose == StationPurpose.Temperature) is not { } primary)
            return own;
        var source = (await sources.OfAsync([parcelId], cancellation))[parcelId];
        if (source.Temperature.Count == 1
            || await records.OfAsync(source, clock.GetCurrentInstant(), cancellation) is not { } record)
        {
            return own;
        }
        var parcel = await db.Parcels.AsNoTracking().SingleAsync(parcel => parcel.Id == parcelId, cancellation);
        var place = new RecordPlace(parcel.Latitude, parcel.Longitude, parcel.ElevationM);
        var shares = record.Stations.ToDictionary(part => part.Station.Id, part => part.Share);
        var blended = source.Temperature.Select(station => station.GhcnId == primary.GhcnId
            ? primary with { Share = shares[station.GhcnId] }
            : new(
                StationPurpose.Temperature, station.Name, station.GhcnId, place.DistanceM(station.Described()),
                station.ElevationM - parcel.ElevationM, station.FirstDay, station.LastDay, shares[station.GhcnId]));
        return [.. blended, .. own.Where(line => line.Purpose != StationPurpose.Temperature)];
    }
}

/// <summary>A station as people are told of it.</summary>
/// <param name="Purpose">What it is consulted for.</param>
/// <param name="Name">Its name.</param>
/// <param name="GhcnId">Its id.</param>
/// <param name="DistanceM">How far it is, metres.</param>
/// <param name="ElevationDifferenceM">How much higher than the parcel it is, metres; null when either is not known.</param>
/// <param name="FirstReading">The first day with a reading; null without any.</param>
/// <param name="LastReading">The last one.</param>
/// <param name="Share">Its share in blended temperatures, 0 to 1; null where the station stands alone.</param>
public sealed record StationLine(
    StationPurpose Purpose, string Name, string GhcnId, double DistanceM, double? ElevationDifferenceM,
    LocalDate? FirstReading, LocalDate? LastReading, double? Share = null)
{
    private const double Percent = 100;

    /// <summary>What is taken from it, as in 'Temperatures, 57 %'.</summary>
    public string Use => (Purpose, Share) switch
    {
        (StationPurpose.Wind, _) => "Wind",
        (StationPurpose.Temperature, null) => "Temperatures",
        (StationPurpose.Temperature, 0) => "Temperatures, on days that lack others",
        (StationPurpose.Temperature, { } share) =>
            $"Temperatures, {(share * Percent).ToString("0", CultureInfo.InvariantCulture)} %",
    };

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
