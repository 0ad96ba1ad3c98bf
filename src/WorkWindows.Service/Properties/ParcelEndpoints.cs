using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Engine.Land;
using WorkWindows.Service.Accounts;

namespace WorkWindows.Service.Properties;

internal static class ParcelEndpoints
{
    /// <summary>A parcel as the API shows it.</summary>
    /// <param name="Id">The parcel.</param>
    /// <param name="PropertyId">Its property.</param>
    /// <param name="Key">The organization's own name for it.</param>
    /// <param name="Name">Its name for people.</param>
    /// <param name="Boundary">A GeoJSON MultiPolygon, or null where only a point is known.</param>
    /// <param name="Latitude">Degrees north: of the point, or of a point inside the boundary.</param>
    /// <param name="Longitude">Degrees east.</param>
    /// <param name="ElevationM">Metres above sea level, or null.</param>
    /// <param name="AreaM2">Area on the ellipsoid, m², or null without a boundary.</param>
    /// <param name="Stand">The inventory, or null where none has been taken.</param>
    /// <param name="Flags">The site flags.</param>
    public sealed record ParcelView(
        Guid Id, Guid PropertyId, string Key, string Name, JsonElement? Boundary, double Latitude, double Longitude,
        double? ElevationM, double? AreaM2, IReadOnlyList<StandRow>? Stand, IReadOnlyList<SiteFlag> Flags);

    public static void MapParcels(this IEndpointRouteBuilder app)
    {
        var ofProperty = app.MapGroup("/api/properties/{propertyId:guid}/parcels").WithTags("Parcels")
            .RequireAuthorization();
        ofProperty.MapGet("", ListAsync).WithSummary("Lists the parcels of a property.");
        ofProperty.MapPost("", CreateAsync).RequireAuthorization(Access.Plan).WithSummary("Adds a parcel.");

        var parcels = app.MapGroup("/api/parcels/{id:guid}").WithTags("Parcels").RequireAuthorization();
        parcels.MapGet("", FindAsync).WithSummary("Shows a parcel.");
        parcels.MapPut("", UpdateAsync).RequireAuthorization(Access.Plan).WithSummary("Changes a parcel.");
        parcels.MapDelete("", DeleteAsync).RequireAuthorization(Access.Plan)
            .WithSummary("Deletes a parcel with its tasks, unless there are decisions about them.");
        parcels.MapPut("/stand", PutStandAsync).RequireAuthorization(Access.Plan)
            .WithSummary("Replaces the stand inventory; null says that none has been taken.");
        parcels.MapPut("/flags", PutFlagsAsync).RequireAuthorization(Access.Plan)
            .WithSummary("Replaces the site flags.");
    }

    private static async Task<Results<Ok<List<ParcelView>>, NotFound>> ListAsync(
        Guid propertyId, VisibleProperties visible, CancellationToken cancellation)
    {
        var property = await visible.All.AsNoTracking().Include(property => property.Parcels)
            .SingleOrDefaultAsync(property => property.Id == propertyId, cancellation);
        return property is null
            ? TypedResults.NotFound()
            : TypedResults.Ok(
                property.Parcels.OrderBy(parcel => parcel.Name, StringComparer.Ordinal).Select(View).ToList());
    }

    private static async Task<Results<Ok<ParcelView>, NotFound>> FindAsync(
        Guid id, VisibleProperties visible, CancellationToken cancellation) =>
        await visible.All.SelectMany(property => property.Parcels).AsNoTracking()
            .SingleOrDefaultAsync(parcel => parcel.Id == id, cancellation) is { } found
            ? TypedResults.Ok(View(found))
            : TypedResults.NotFound();

    private static async Task<Results<Created<ParcelView>, NotFound, ValidationProblem, ProblemHttpResult>> CreateAsync(
        Guid propertyId, ParcelForm form, ParcelHandler parcels, CancellationToken cancellation) =>
        (await parcels.CreateAsync(propertyId, form, cancellation)).AnswerCreated(
            View, made => $"/api/parcels/{made.Id}");

    private static async Task<Results<Ok<ParcelView>, NotFound, ValidationProblem, ProblemHttpResult>> UpdateAsync(
        Guid id, ParcelForm form, ParcelHandler parcels, CancellationToken cancellation) =>
        (await parcels.UpdateAsync(id, form, cancellation)).Answer(View);

    private static async Task<Results<NoContent, NotFound, ValidationProblem, ProblemHttpResult>> DeleteAsync(
        Guid id, ParcelHandler parcels, CancellationToken cancellation) =>
        (await parcels.DeleteAsync(id, cancellation)).AnswerNothing();

    private static async Task<Results<Ok<ParcelView>, NotFound, ValidationProblem, ProblemHttpResult>> PutStandAsync(
        Guid id, StandForm form, ParcelHandler parcels, CancellationToken cancellation) =>
        (await parcels.PutStandAsync(id, form.Stand, cancellation)).Answer(View);

    private static async Task<Results<Ok<ParcelView>, NotFound, ValidationProblem, ProblemHttpResult>> PutFlagsAsync(
        Guid id, FlagsForm form, ParcelHandler parcels, CancellationToken cancellation) =>
        (await parcels.PutFlagsAsync(id, form.Flags, cancellation)).Answer(View);

    private static ParcelView View(Parcel parcel) => new(
        parcel.Id, parcel.PropertyId, parcel.Key, parcel.Name,
        parcel.BoundaryGeoJson is { } json ? JsonSerializer.Deserialize<JsonElement>(json) : null,
        parcel.Latitude, parcel.Longitude, parcel.ElevationM, parcel.AreaM2, parcel.Stand, parcel.SiteFlags);

    /// <param name="Stand">The inventory; null, which must be written out, says that none has been taken.</param>
    public sealed record StandForm([property: JsonRequired] IReadOnlyList<StandRowForm>? Stand);

    /// <param name="Flags">All flags of the parcel; null for none.</param>
    public sealed record FlagsForm([property: JsonRequired] IReadOnlyList<string>? Flags);
}
