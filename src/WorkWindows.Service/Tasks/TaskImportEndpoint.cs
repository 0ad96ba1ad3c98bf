using Microsoft.AspNetCore.Http.HttpResults;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Tasks;

internal static class TaskImportEndpoint
{
    private const int LimitMegabytes = 10;

    public static void MapTaskImport(this IEndpointRouteBuilder app) =>
        app.MapPost("/api/imports/tasks", ImportAsync).WithTags("Imports").RequireAuthorization(Access.Plan)
            .WithSummary("Stores the planned tasks of a CSV file, all of them or none.")
            .Accepts<IFormFile>("text/csv", HandedInFile.AnyType);

    private static async Task<Results<Ok<ImportCounts>, ProblemHttpResult>> ImportAsync(
        HttpRequest request, TaskImportHandler imports, CancellationToken cancellation)
    {
        var (content, problem) = await HandedInFile.ReadAsync(request, LimitMegabytes, cancellation);
        return content is null ? problem! : (await imports.ImportAsync(content, cancellation)).Answer();
    }
}
