using Microsoft.AspNetCore.Http.HttpResults;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Notices.Calendars;

namespace WorkWindows.Service.Notices.Choices;

internal static class ChoiceEndpoints
{
    /// <param name="Address">The address to subscribe to. Whoever has it can read the calendar.</param>
    public sealed record CalendarView(string Address);

    public static void MapChoices(this IEndpointRouteBuilder app)
    {
        var person = app.MapGroup("/api/people/{id:guid}").WithTags("Notices").RequireAuthorization();
        person.MapGet("/notices", ReadAsync)
            .WithSummary("What a person is told, and how; one's own, or any for consultants.");
        person.MapPut("/notices", SaveAsync).WithSummary("Choose what a person is told, and how.");
        person.MapPost("/calendar", NewCalendarAsync)
            .WithSummary("Give the person's calendar feed a new address; the old one stops.");
        person.MapDelete("/calendar", EndCalendarAsync).WithSummary("End the person's calendar feed.");
    }

    private static async Task<Results<Ok<ChoiceView>, NotFound>> ReadAsync(
        Guid id, ChoiceHandler choices, CancellationToken cancellation) =>
        await choices.ReadAsync(id, cancellation) is { } found ? TypedResults.Ok(found) : TypedResults.NotFound();

    private static async Task<Results<Ok<ChoiceView>, NotFound, ValidationProblem, ProblemHttpResult>> SaveAsync(
        Guid id, ChoiceForm form, ChoiceHandler choices, CancellationToken cancellation) =>
        (await choices.SaveAsync(id, form, cancellation)).Answer(view => view);

    private static async Task<Results<Ok<CalendarView>, NotFound>> NewCalendarAsync(
        Guid id, ChoiceHandler choices, CalendarFeed feed, Caller caller, HttpRequest request,
        CancellationToken cancellation) =>
        await choices.NewCalendarAsync(id, cancellation) is { } key
            ? TypedResults.Ok(new CalendarView(feed.AddressOf(caller.OrganizationId, key, request)))
            : TypedResults.NotFound();

    private static async Task<Results<NoContent, NotFound>> EndCalendarAsync(
        Guid id, ChoiceHandler choices, CancellationToken cancellation) =>
        await choices.EndCalendarAsync(id, cancellation) ? TypedResults.NoContent() : TypedResults.NotFound();
}
