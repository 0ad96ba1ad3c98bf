using Microsoft.AspNetCore.Http.HttpResults;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Properties;

internal static class ParcelImportEndpoint
{
    private const int LimitMegabytes = 10;

    public static void MapParcelImport(this IEndpointRouteBuilder app) =>
        app.MapPost("/api/imports/parcels", ImportAsync).WithTags("Imports").RequireAuthorization(Access.Plan)
            .WithSummary("Stores the parcels of a GeoJSON FeatureCollection, all of them or none.")
            .Accepts<IFormFile>("application/geo+json", ["application/json", .. HandedInFile.AnyType]);

    private static async Task<Results<Ok<ParcelImportCounts>, ProblemHttpResult>> ImportAsync(
        HttpRequest request, ParcelImportHandler imports, CancellationToken cancellation)
    {
        var (content, problem) = await HandedInFile.ReadAsync(request, LimitMegabytes, cancellation);
        return content is null ? problem! : (await imports.ImportAsync(content, cancellation)).Answer();
    }
}
