using System.Globalization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using UnitsNet;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>The stations that a parcel's weather comes from.</summary>
public sealed class ParcelWeather(WorkWindowsDb db, ParcelRecords records, IClock clock)
{
    /// <summary>Temperatures first: the parcel's own station, then those that it is blended with; wind last.</summary>
    /// <param name="parcel">The parcel.</param>
    /// <param name="source">Its source.</param>
    /// <param name="cancellation">Ends the query.</param>
    public async Task<IReadOnlyList<StationLine>> SourcesAsync(
        PlacedParcel parcel, WeatherSource source, CancellationToken cancellation)
    {
        var own = await db.ParcelStations.AsNoTracking()
            .Where(link => link.ParcelId == parcel.Id).OrderBy(link => link.Purpose)
            .Select(link => new StationLine(
                link.Purpose, link.Station.Name, link.Station.GhcnId, link.DistanceM, link.ElevationDifferenceM,
                link.Station.FirstDay,
                new(link.Station.LastDay, db.Forecasts.Where(forecast => forecast.StationId == link.StationId)
                    .Max(forecast => (Instant?)forecast.IssuedAt)),
                link.Purpose == StationPurpose.Temperature, null))
            .ToListAsync(cancellation);
        if (own.Find(line => line.Purpose == StationPurpose.Temperature) is not { } primary)
            return own;
        if (source.Temperature.Count == 1
            || await records.OfAsync(source, clock.GetCurrentInstant(), cancellation) is not { } record)
        {
            return own;
        }
        var shares = record.Stations.ToDictionary(part => part.Station.Id, part => part.Share);
        var blended = source.Temperature.Select(station => station.GhcnId == primary.GhcnId
            ? primary with { Share = shares[station.GhcnId] }
            : new(
                StationPurpose.Temperature, station.Name, station.GhcnId, parcel.Place.DistanceM(station.Described()),
                station.ElevationM - parcel.Place.ElevationM, station.FirstDay, new(station.LastDay, null),
                GivesForecast: false, shares[station.GhcnId]));
        return [.. blended, .. own.Where(line => line.Purpose != StationPurpose.Temperature)];
    }

    /// <summary>
    /// How old what is known of temperatures is on each property that has a station; where its parcels differ, that of
    /// the parcel with the oldest.
    /// </summary>
    public async Task<IReadOnlyDictionary<Guid, WeatherAge>> AgesAsync(
        IReadOnlyCollection<Guid> properties, CancellationToken cancellation)
    {
        var rows = await db.ParcelStations.AsNoTracking()
            .Where(link => link.Purpose == StationPurpose.Temperature)
            .Join(db.Parcels, link => link.ParcelId, parcel => parcel.Id, (link, parcel) => new
            {
                parcel.PropertyId,
                link.StationId,
                link.Station.LastDay,
            })
            .Where(row => properties.Contains(row.PropertyId)).Distinct()
            .Select(row => new
            {
                row.PropertyId,
                row.LastDay,
                IssuedAt = db.Forecasts.Where(forecast => forecast.StationId == row.StationId)
                    .Max(forecast => (Instant?)forecast.IssuedAt),
            })
            .ToListAsync(cancellation);
        return rows.GroupBy(row => row.PropertyId).ToDictionary(property => property.Key, property => new WeatherAge(
            property.Any(row => row.LastDay is null) ? null : property.Min(row => row.LastDay),
            property.Any(row => row.IssuedAt is null) ? null : property.Min(row => row.IssuedAt)));
    }
}

/// <summary>A station as people are told of it.</summary>
/// <param name="Purpose">What it is consulted for.</param>
/// <param name="Name">Its name.</param>
/// <param name="GhcnId">Its id.</param>
/// <param name="DistanceM">How far it is, metres.</param>
/// <param name="ElevationDifferenceM">
/// How much higher than the parcel it is, metres; null when either is not known.
/// </param>
/// <param name="FirstReading">The first day with a reading; null without any.</param>
/// <param name="Age">How old its last reading is, and the newest forecast for it.</param>
/// <param name="GivesForecast">Whether the parcel's forecast is the one for this station.</param>
/// <param name="Share">Its share in blended temperatures, 0 to 1; null where the station stands alone.</param>
public sealed record StationLine(
    StationPurpose Purpose, string Name, string GhcnId, double DistanceM, double? ElevationDifferenceM,
    LocalDate? FirstReading, WeatherAge Age, bool GivesForecast, double? Share = null)
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
