using System.Linq.Expressions;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace WorkWindows.Service.Properties;

public static class PropertyEndpoints
{
    /// <summary>A property as the API shows it.</summary>
    public sealed record PropertyView(
        Guid Id, string Key, string Name, Guid? LandownerId, string CountyFips, string State, string TimeZone,
        string? AccessNotes);

    private static readonly Expression<Func<Property, PropertyView>> View = property => new PropertyView(
        property.Id, property.Key, property.Name, property.LandownerId, property.CountyFips, property.State,
        property.TimeZone, property.AccessNotes);

    public static void AddProperties(this IHostApplicationBuilder builder) =>
        builder.Services.AddScoped<VisibleProperties>();

    public static void MapProperties(this IEndpointRouteBuilder app)
    {
        var properties = app.MapGroup("/api/properties").WithTags("Properties").RequireAuthorization();
        properties.MapGet("", ListAsync);
        properties.MapGet("/{id:guid}", FindAsync);
    }

    private static async Task<List<PropertyView>> ListAsync(VisibleProperties visible, CancellationToken cancellation) =>
        await visible.All.OrderBy(property => property.Name).Select(View).ToListAsync(cancellation);

    private static async Task<Results<Ok<PropertyView>, NotFound>> FindAsync(
        Guid id, VisibleProperties visible, CancellationToken cancellation) =>
        await visible.All.Where(property => property.Id == id).Select(View).SingleOrDefaultAsync(cancellation)
            is { } found
            ? TypedResults.Ok(found)
            : TypedResults.NotFound();
}
