using Microsoft.AspNetCore.Http.HttpResults;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Chances;

internal static class ChanceEndpoints
{
    public static void MapChances(this IEndpointRouteBuilder app) =>
        app.MapGet("/api/tasks/{id:guid}/chances", ChancesAsync).WithTags("Windows").RequireAuthorization()
            .WithSummary("Shows how likely each coming day of a task may be used, and when it opens and closes.");

    private static async Task<Results<Ok<ChancesView>, NotFound, ValidationProblem>> ChancesAsync(
        Guid id, string? to, WindowHandler windows, CancellationToken cancellation)
    {
        if (await windows.TodayAsync(id, cancellation) is not { } today)
            return TypedResults.NotFound();
        var faults = new FieldFaults();
        if (!AskedDays.TryRead(null, to, today, faults, out var days))
            return faults.ToProblem();
        return await windows.ReadAsync(id, days, cancellation) is { } input
            ? TypedResults.Ok(ChancesView.Of(input.Task, input.ChancesOf(days), today))
            : TypedResults.NotFound();
    }
}
