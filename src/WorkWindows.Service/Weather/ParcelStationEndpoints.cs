using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Where a parcel's weather comes from.</summary>
internal static class ParcelStationEndpoints
{
    /// <param name="Purpose">What it is consulted for.</param>
    /// <param name="GhcnId">The station.</param>
    /// <param name="Name">Its name.</param>
    /// <param name="DistanceM">Great-circle distance from the parcel, metres.</param>
    /// <param name="ElevationDifferenceM">Station above parcel, metres; null where either is not known.</param>
    /// <param name="IsManual">Someone chose it.</param>
    public sealed record LinkView(
        StationPurpose Purpose, string GhcnId, string Name, double DistanceM, double? ElevationDifferenceM,
        bool IsManual);

    /// <param name="Temperature">The id of a station to take temperatures from, or null for the nearest one.</param>
    /// <param name="Wind">The id of a station to take winds from, or null for the nearest one.</param>
    public sealed record ChoiceForm(string? Temperature, string? Wind);

    public static void MapParcelStations(this IEndpointRouteBuilder app)
    {
        var links = app.MapGroup("/api/parcels/{id:guid}/station").WithTags("Weather").RequireAuthorization();
        links.MapGet("", ListAsync).WithSummary("Shows which stations a parcel's weather comes from, and how far off.");
        links.MapPut("", ChooseAsync).RequireAuthorization(Access.Plan)
            .WithSummary("Chooses the stations of a parcel by hand; null leaves a choice to the distance.");
    }

    private static async Task<Results<Ok<List<LinkView>>, NotFound>> ListAsync(
        Guid id, VisibleProperties visible, WorkWindowsDb db, CancellationToken cancellation) =>
        await visible.All.AnyAsync(property => property.Parcels.Any(parcel => parcel.Id == id), cancellation)
            ? TypedResults.Ok(await LinksAsync(id, db, cancellation))
            : TypedResults.NotFound();

    private static async Task<Results<Ok<List<LinkView>>, NotFound, ValidationProblem>> ChooseAsync(
        Guid id, ChoiceForm form, WorkWindowsDb db, CurrentOrganization organization, StationAssignment stations,
        PromptLook look, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        if (!await db.Parcels.AnyAsync(parcel => parcel.Id == id, cancellation))
            return TypedResults.NotFound();
        var faults = new FieldFaults();
        var temperature = await FindAsync("temperature", form.Temperature, faults, db, cancellation);
        var wind = await FindAsync("wind", form.Wind, faults, db, cancellation);
        if (faults.Any)
            return faults.ToProblem();
        // A choice by hand takes the others out of the blend, even where it names the station that was the nearest.
        var before = await stations.UsedAsync(cancellation);
        await stations.ChooseAsync(id, StationPurpose.Temperature, temperature, cancellation);
        await stations.ChooseAsync(id, StationPurpose.Wind, wind, cancellation);
        var moved = await stations.AssignAsync(before, cancellation);
        look.Note(WeatherChange.OfParcels(moved));
        await db.SaveChangesAsync(cancellation);
        await change.CommitAsync(cancellation);
        look.Enqueue();
        return TypedResults.Ok(await LinksAsync(id, db, cancellation));
    }

    private static async Task<Station?> FindAsync(
        string field, string? ghcnId, FieldFaults faults, WorkWindowsDb db, CancellationToken cancellation)
    {
        if (ghcnId is null)
            return null;
        var station = await db.Stations.SingleOrDefaultAsync(row => row.GhcnId == ghcnId, cancellation);
        if (station is null)
            faults.Add(field, ghcnId, "the id of a station that exists, or nothing");
        return station;
    }

    private static Task<List<LinkView>> LinksAsync(Guid parcelId, WorkWindowsDb db, CancellationToken cancellation) =>
        db.ParcelStations.AsNoTracking().Where(link => link.ParcelId == parcelId).OrderBy(link => link.Purpose)
            .Select(link => new LinkView(
                link.Purpose, link.Station.GhcnId, link.Station.Name, link.DistanceM, link.ElevationDifferenceM,
                link.IsManual))
            .ToListAsync(cancellation);
}
