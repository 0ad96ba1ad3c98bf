using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;

namespace WorkWindows.Service.Properties;

internal static class LeafOutEndpoints
{
    /// <param name="ObservedOn">The day on which the buds of the canopy had opened.</param>
    /// <param name="Note">Who saw what, or null.</param>
    public sealed record LeafOutForm(LocalDate? ObservedOn, string? Note);

    public sealed record LeafOutView(
        int Year, LocalDate ObservedOn, string? Note, Guid? RecordedById, Instant RecordedAt);

    public static void MapLeafOuts(this IEndpointRouteBuilder app)
    {
        var leafOuts = app.MapGroup("/api/properties/{propertyId:guid}/observations/leaf-out").WithTags("Observations")
            .RequireAuthorization();
        leafOuts.MapGet("", ListAsync).WithSummary("Lists the leaf-outs that were seen on a property.");
        leafOuts.MapPut("/{year:int}", PutAsync).RequireAuthorization(Access.Plan)
            .WithSummary("Says when leaf-out was seen in a year; it takes the place of the prediction.");
        leafOuts.MapDelete("/{year:int}", DeleteAsync).RequireAuthorization(Access.Plan)
            .WithSummary("Takes an observation back, so that the prediction counts again.");
    }

    private static async Task<Results<Ok<List<LeafOutView>>, NotFound>> ListAsync(
        Guid propertyId, VisibleProperties visible, CancellationToken cancellation)
    {
        var property = await visible.All.AsNoTracking().Include(property => property.Observations)
            .SingleOrDefaultAsync(property => property.Id == propertyId, cancellation);
        return property is null
            ? TypedResults.NotFound()
            : TypedResults.Ok(property.Observations.Where(seen => seen.Kind == SiteObservation.LeafOut)
                .OrderBy(seen => seen.ObservedOn).Select(View).ToList());
    }

    private static async Task<Results<Ok<LeafOutView>, NotFound, ValidationProblem, ProblemHttpResult>> PutAsync(
        Guid propertyId, int year, LeafOutForm form, Caller caller, LeafOutHandler leafOuts,
        CancellationToken cancellation) =>
        (await leafOuts.PutAsync(propertyId, year, form.ObservedOn, form.Note, caller.PersonId, cancellation))
        .Answer(View);

    private static async Task<Results<NoContent, NotFound, ValidationProblem, ProblemHttpResult>> DeleteAsync(
        Guid propertyId, int year, LeafOutHandler leafOuts, CancellationToken cancellation) =>
        (await leafOuts.DeleteAsync(propertyId, year, cancellation)).AnswerNothing();

    private static LeafOutView View(SiteObservation seen) =>
        new(seen.ObservedOn.Year, seen.ObservedOn, seen.Note, seen.RecordedById, seen.RecordedAt);
}
