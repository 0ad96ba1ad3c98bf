using System.Linq.Expressions;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Accounts;

namespace WorkWindows.Service.Properties;

public static class PropertyEndpoints
{
    /// <summary>A property as the API shows it.</summary>
    public sealed record PropertyView(
        Guid Id, string Key, string Name, Guid? LandownerId, string CountyFips, string State, string TimeZone,
        string? AccessNotes, EmergencyForm Emergency);

    private static readonly Expression<Func<Property, PropertyView>> View = property => new PropertyView(
        property.Id, property.Key, property.Name, property.LandownerId, property.CountyFips, property.State,
        property.TimeZone, property.AccessNotes,
        new EmergencyForm(
            property.NearestAddress, property.Sheriff, property.Hospital, property.PoisonCentre, property.Utility));

    private static readonly Func<Property, PropertyView> ViewOf = View.Compile();

    public static void AddProperties(this IHostApplicationBuilder builder)
    {
        builder.Services.AddScoped<VisibleProperties>();
        builder.Services.AddScoped<PropertyHandler>();
        builder.Services.AddScoped<ParcelHandler>();
        builder.Services.AddScoped<LeafOutHandler>();
        builder.Services.AddScoped<SiteReadingHandler>();
        builder.Services.AddScoped<LandownerNames>();
        builder.Services.AddScoped<ParcelImportHandler>();
    }

    public static void MapProperties(this IEndpointRouteBuilder app)
    {
        var properties = app.MapGroup("/api/properties").WithTags("Properties").RequireAuthorization();
        properties.MapGet("", ListAsync).WithSummary("Lists the properties that the caller may see.");
        properties.MapGet("/{id:guid}", FindAsync).WithSummary("Shows a property.");
        properties.MapPost("", CreateAsync).RequireAuthorization(Access.Plan)
            .WithSummary("Creates a property, with its first parcel or without.");
        properties.MapPut("/{id:guid}", UpdateAsync).RequireAuthorization(Access.Plan)
            .WithSummary("Changes a property; its time zone is corrected here.");
        properties.MapDelete("/{id:guid}", DeleteAsync).RequireAuthorization(Access.Plan)
            .WithSummary("Deletes a property with its parcels and tasks, unless there are decisions about them.");
        app.MapParcels();
        app.MapLeafOuts();
        app.MapSiteReadings();
        app.MapParcelImport();
    }

    private static async Task<List<PropertyView>> ListAsync(VisibleProperties visible, CancellationToken cancellation) =>
        await visible.All.OrderBy(property => property.Name).Select(View).ToListAsync(cancellation);

    private static async Task<Results<Ok<PropertyView>, NotFound>> FindAsync(
        Guid id, VisibleProperties visible, CancellationToken cancellation) =>
        await visible.All.Where(property => property.Id == id).Select(View).SingleOrDefaultAsync(cancellation)
            is { } found
            ? TypedResults.Ok(found)
            : TypedResults.NotFound();

    private static async Task<Results<Created<PropertyView>, NotFound, ValidationProblem, ProblemHttpResult>> CreateAsync(
        PropertyForm form, PropertyHandler properties, CancellationToken cancellation) =>
        (await properties.CreateAsync(form, cancellation)).AnswerCreated(ViewOf, made => $"/api/properties/{made.Id}");

    private static async Task<Results<Ok<PropertyView>, NotFound, ValidationProblem, ProblemHttpResult>> UpdateAsync(
        Guid id, PropertyForm form, PropertyHandler properties, CancellationToken cancellation) =>
        (await properties.UpdateAsync(id, form, cancellation)).Answer(ViewOf);

    private static async Task<Results<NoContent, NotFound, ValidationProblem, ProblemHttpResult>> DeleteAsync(
        Guid id, PropertyHandler properties, CancellationToken cancellation) =>
        (await properties.DeleteAsync(id, cancellation)).AnswerNothing();
}
