using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Crews;

/// <summary>Plans and bookings.</summary>
internal static class PlanEndpoints
{
    public sealed record PlanView(
        Guid Id, Instant ProposedAt, string ProposedBy, LocalDate FirstDay, LocalDate LastDay, PlanStatus Status,
        Instant? DecidedAt, string? DecidedBy, PlanContent Content);

    /// <summary>A plan in the list of all, without its content.</summary>
    public sealed record PlanLine(
        Guid Id, Instant ProposedAt, string ProposedBy, LocalDate FirstDay, LocalDate LastDay, PlanStatus Status,
        Instant? DecidedAt, string? DecidedBy);

    public sealed record BookingView(
        Guid Id, Guid TaskId, Guid CrewId, LocalDate Day, decimal Hours, int Place, bool IsFixed,
        IReadOnlyList<Guid> PersonIds, IReadOnlyList<Guid> EquipmentIds);

    public static void MapPlans(this IEndpointRouteBuilder app)
    {
        var plans = app.MapGroup("/api/plans").WithTags("Crews").RequireAuthorization(Access.Plan);
        plans.MapGet("", (WorkWindowsDb db, CancellationToken cancellation) => db.CrewPlans
            .OrderByDescending(plan => plan.ProposedAt).Select(plan => new PlanLine(
                plan.Id, plan.ProposedAt, plan.ProposedBy, plan.FirstDay, plan.LastDay, plan.Status, plan.DecidedAt,
                plan.DecidedBy))
            .ToListAsync(cancellation)).WithSummary("Lists all plans, the newest first.");
        plans.MapGet("/{id:guid}", async (Guid id, WorkWindowsDb db, CancellationToken cancellation) =>
            await db.CrewPlans.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancellation) is { } plan
                ? Results.Ok(Of(plan))
                : Results.NotFound()).WithSummary("Shows a plan.").Produces<PlanView>();
        plans.MapPost("", async (PlanForm form, PlanHandler handler, CancellationToken cancellation) =>
            (await handler.ProposeAsync(form, cancellation)).AnswerCreated(Of, made => $"/api/plans/{made.Id}"))
            .WithSummary("Proposes a plan from today on; nobody is told of it.");
        plans.MapPost("/{id:guid}/publication", async (Guid id, PlanHandler handler, CancellationToken cancellation) =>
            (await handler.PublishAsync(id, cancellation)).Answer(Of)).WithSummary("Makes a plan the crews' days.");
        plans.MapDelete("/{id:guid}", async (Guid id, PlanHandler handler, CancellationToken cancellation) =>
            (await handler.DiscardAsync(id, cancellation)).AnswerNothing()).WithSummary("Discards a proposed plan; it is kept.");
        MapBookings(app);
    }

    private static void MapBookings(IEndpointRouteBuilder app)
    {
        var bookings = app.MapGroup("/api/bookings").WithTags("Crews").RequireAuthorization(Access.Work);
        bookings.MapGet("", ListAsync).WithSummary("Lists what crews do from a day to another.");
        bookings.MapPost("", async (BookingForm form, BookingHandler handler, CancellationToken cancellation) =>
                (await handler.AddAsync(form, cancellation)).AnswerCreated(Of, made => $"/api/bookings/{made.Id}"))
            .RequireAuthorization(Access.Plan).WithSummary("Gives work to a crew by hand.");
        bookings.MapPost("/{id:guid}/move", async (Guid id, MoveForm form, BookingHandler handler, CancellationToken cancellation) =>
                (await handler.MoveAsync(id, form, cancellation)).Answer(Of))
            .RequireAuthorization(Access.Plan).WithSummary("Moves work to another day or crew, unless a hard rule stands against it.");
        bookings.MapDelete("/{id:guid}", async (Guid id, BookingHandler handler, CancellationToken cancellation) =>
                (await handler.RemoveAsync(id, cancellation)).AnswerNothing())
            .RequireAuthorization(Access.Plan).WithSummary("Takes work off a crew's day.");
    }

    private static async Task<Results<Ok<List<BookingView>>, ValidationProblem>> ListAsync(
        string? from, string? to, WorkWindowsDb db, WeekHandler week, CancellationToken cancellation)
    {
        var faults = new FieldFaults();
        if (!AskedDays.TryRead(from, to, await week.TodayAsync(cancellation), faults, out var days))
            return faults.ToProblem();
        var (first, last) = (days.First, days.Last);
        return TypedResults.Ok(await db.Bookings.Where(row => row.Day >= first && row.Day <= last)
            .OrderBy(row => row.Day).ThenBy(row => row.CrewId).ThenBy(row => row.Place).Select(row => new BookingView(
                row.Id, row.TaskId, row.CrewId, row.Day, row.Hours, row.Place, row.IsFixed,
                row.People.Select(person => person.PersonId).ToList(), row.Equipment.Select(piece => piece.EquipmentId).ToList()))
            .ToListAsync(cancellation));
    }

    private static PlanView Of(StoredPlan plan) => new(
        plan.Id, plan.ProposedAt, plan.ProposedBy, plan.FirstDay, plan.LastDay, plan.Status, plan.DecidedAt, plan.DecidedBy,
        PlanContent.Read(plan));

    private static BookingView Of(Booking row) => new(
        row.Id, row.TaskId, row.CrewId, row.Day, row.Hours, row.Place, row.IsFixed,
        [.. row.People.Select(person => person.PersonId)], [.. row.Equipment.Select(piece => piece.EquipmentId)]);
}
