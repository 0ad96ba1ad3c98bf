using Hangfire;
using Microsoft.AspNetCore.Http.HttpResults;
using WorkWindows.Service.Accounts;

namespace WorkWindows.Service.Notices;

internal static class NightlyEndpoint
{
    /// <summary>
    /// Puts the night's work in the queue at once, for a consultant who does not want to wait for the morning.
    /// </summary>
    public static void MapNightlyRun(this IEndpointRouteBuilder app) =>
        app.MapPost("/api/nightly-run", Start).WithTags("Notices").RequireAuthorization(Access.Plan)
            .WithSummary("Evaluate every task now, store what changed and write the notices; safe to repeat.");

    private static Accepted Start(Caller caller, IBackgroundJobClient jobs)
    {
        jobs.Enqueue<NightlyJob>(job => job.RunAsync(caller.OrganizationId, CancellationToken.None));
        return TypedResults.Accepted((string?)null);
    }
}
