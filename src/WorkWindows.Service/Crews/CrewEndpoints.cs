using System.Linq.Expressions;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Crews;

/// <summary>Crews, their equipment, their days off and the drives between their places of work.</summary>
internal static class CrewEndpoints
{
    private const int LimitMegabytes = 10;

    public sealed record CrewView(
        Guid Id, string Name, Guid LeadId, IReadOnlyList<Guid> MemberIds, decimal HoursPerDay, double? BaseLatitude,
        double? BaseLongitude, LocalDate? FirstDay, LocalDate? LastDay);

    public sealed record EquipmentView(Guid Id, string Name, string Kind, Guid? CrewId);

    public sealed record AbsenceView(
        Guid Id, Guid? PersonId, Guid? CrewId, Guid? EquipmentId, LocalDate FirstDay, LocalDate LastDay, string? Reason);

    private static readonly Expression<Func<Crew, CrewView>> View = crew => new CrewView(
        crew.Id, crew.Name, crew.LeadId, crew.Members.Select(member => member.PersonId).ToList(), crew.HoursPerDay,
        crew.BaseLatitude, crew.BaseLongitude, crew.FirstDay, crew.LastDay);

    private static readonly Func<Crew, CrewView> ViewOf = View.Compile();

    public static void MapCrews(this IEndpointRouteBuilder app)
    {
        var crews = app.MapGroup("/api/crews").WithTags("Crews").RequireAuthorization(Access.Work);
        crews.MapGet("", (WorkWindowsDb db, CancellationToken cancellation) =>
            db.Crews.OrderBy(crew => crew.Name).Select(View).ToListAsync(cancellation)).WithSummary("Lists the crews.");
        crews.MapPost("", async (CrewForm form, CrewHandler handler, CancellationToken cancellation) =>
                (await handler.SaveAsync(null, form, cancellation)).AnswerCreated(ViewOf, made => $"/api/crews/{made.Id}"))
            .RequireAuthorization(Access.Plan).WithSummary("Adds a crew.");
        crews.MapPut("/{id:guid}", async (Guid id, CrewForm form, CrewHandler handler, CancellationToken cancellation) =>
                (await handler.SaveAsync(id, form, cancellation)).Answer(ViewOf))
            .RequireAuthorization(Access.Plan).WithSummary("Changes a crew.");
        crews.MapDelete("/{id:guid}", async (Guid id, CrewHandler handler, CancellationToken cancellation) =>
                (await handler.DeleteAsync(id, cancellation)).AnswerNothing())
            .RequireAuthorization(Access.Plan).WithSummary("Deletes a crew without work.");
        var weights = app.MapGroup("/api/weights").WithTags("Crews").RequireAuthorization(Access.Plan);
        weights.MapGet("", (WeightsHandler handler, CancellationToken cancellation) => handler.ReadAsync(cancellation))
            .WithSummary("What plans weigh and what advice keeps within.");
        weights.MapPut("", async (WeightsForm form, WeightsHandler handler, CancellationToken cancellation) =>
            (await handler.SaveAsync(form, cancellation)).Answer(saved => saved))
            .WithSummary("Replaces what is set; a part that is null is as usual.");
        MapEquipment(app);
        MapAbsences(app);
        app.MapPost("/api/imports/drive-times", ImportDrivesAsync).WithTags("Imports").RequireAuthorization(Access.Plan)
            .WithSummary("Replaces the drive times by those of a CSV file, all of them or none.")
            .Accepts<IFormFile>("text/csv", HandedInFile.AnyType);
    }

    private static void MapEquipment(IEndpointRouteBuilder app)
    {
        var equipment = app.MapGroup("/api/equipment").WithTags("Crews").RequireAuthorization(Access.Plan);
        equipment.MapGet("", (WorkWindowsDb db, CancellationToken cancellation) => db.Equipment
            .OrderBy(piece => piece.Name).Select(piece => new EquipmentView(piece.Id, piece.Name, piece.Kind, piece.CrewId))
            .ToListAsync(cancellation)).WithSummary("Lists the equipment.");
        equipment.MapPost("", async (EquipmentForm form, EquipmentHandler handler, CancellationToken cancellation) =>
            (await handler.SaveAsync(null, form, cancellation)).AnswerCreated(Of, made => $"/api/equipment/{made.Id}"))
            .WithSummary("Adds a piece of equipment.");
        equipment.MapPut("/{id:guid}",
            async (Guid id, EquipmentForm form, EquipmentHandler handler, CancellationToken cancellation) =>
                (await handler.SaveAsync(id, form, cancellation)).Answer(Of)).WithSummary("Changes a piece of equipment.");
        equipment.MapDelete("/{id:guid}", async (Guid id, EquipmentHandler handler, CancellationToken cancellation) =>
            (await handler.DeleteAsync(id, cancellation)).AnswerNothing()).WithSummary("Deletes a piece that is not booked.");

        static EquipmentView Of(Equipment piece) => new(piece.Id, piece.Name, piece.Kind, piece.CrewId);
    }

    private static void MapAbsences(IEndpointRouteBuilder app)
    {
        var absences = app.MapGroup("/api/absences").WithTags("Crews").RequireAuthorization(Access.Plan);
        absences.MapGet("", (WorkWindowsDb db, CancellationToken cancellation) => db.Absences
            .OrderBy(row => row.FirstDay).ThenBy(row => row.Id).Select(row => new AbsenceView(
                row.Id, row.PersonId, row.CrewId, row.EquipmentId, row.FirstDay, row.LastDay, row.Reason))
            .ToListAsync(cancellation)).WithSummary("Lists the days on which people, crews and equipment are not there.");
        absences.MapPost("", async (AbsenceForm form, AbsenceHandler handler, CancellationToken cancellation) =>
            (await handler.AddAsync(form, cancellation)).AnswerCreated(Of, made => $"/api/absences/{made.Id}"))
            .WithSummary("Adds days off.");
        absences.MapDelete("/{id:guid}", async (Guid id, AbsenceHandler handler, CancellationToken cancellation) =>
            (await handler.DeleteAsync(id, cancellation)).AnswerNothing()).WithSummary("Takes days off back.");

        static AbsenceView Of(Absence row) => new(
            row.Id, row.PersonId, row.CrewId, row.EquipmentId, row.FirstDay, row.LastDay, row.Reason);
    }

    private static async Task<Results<Ok<ImportCounts>, ProblemHttpResult>> ImportDrivesAsync(
        HttpRequest request, DriveTimeHandler imports, CancellationToken cancellation)
    {
        var (content, problem) = await HandedInFile.ReadAsync(request, LimitMegabytes, cancellation);
        return content is null ? problem! : (await imports.ImportAsync(content, cancellation)).Answer();
    }
}
