using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Audit;

public static class AuditEndpoints
{
    private const int DaysBack = 30;
    private const int MostEntries = 1000;

    private static readonly Dictionary<string, AuditKind> Kinds = Enum.GetValues<AuditKind>()
        .ToDictionary(kind => JsonNamingPolicy.KebabCaseLower.ConvertName($"{kind}"));

    /// <param name="At">When.</param>
    /// <param name="By">The name of the person or of the machine's key.</param>
    /// <param name="PersonId">The person, or null for a machine.</param>
    /// <param name="Kind">What the row is.</param>
    /// <param name="RowId">The row that was changed.</param>
    /// <param name="Before">What it said; null when it was created.</param>
    /// <param name="After">What it says since; null when it was deleted.</param>
    public sealed record AuditView(
        Instant At, string By, Guid? PersonId, AuditKind Kind, Guid RowId, JsonElement? Before, JsonElement? After);

    public static void AddAudit(this IHostApplicationBuilder builder) => builder.Services.AddScoped<AuditLog>();

    public static void MapAudit(this IEndpointRouteBuilder app) =>
        app.MapGet("/api/audit", ListAsync).WithTags("Audit").RequireAuthorization(Access.Plan)
            .WithSummary("Lists who changed what bears on verdicts, recorded incidents or signed checklists, newest first.");

    private static async Task<Results<Ok<List<AuditView>>, ValidationProblem>> ListAsync(
        string? from, string? to, string? kind, WorkWindowsDb db, IClock clock, CancellationToken cancellation)
    {
        var name = await db.Organizations.Select(organization => organization.TimeZone).SingleAsync(cancellation);
        var zone = DateTimeZoneProviders.Tzdb[name];
        var today = clock.GetCurrentInstant().InZone(zone).Date;
        var faults = new FieldFaults();
        if (kind is not null && !Kinds.ContainsKey(kind))
            faults.Add("kind", kind, string.Join(", ", Kinds.Keys));
        if (!AskedDays.TryRead(
            from ?? $"{today.PlusDays(-DaysBack):R}", to ?? $"{today:R}", today, faults, out var days))
        {
            return faults.ToProblem();
        }

        var start = zone.AtStartOfDay(days.First).ToInstant();
        var end = zone.AtStartOfDay(days.Last.PlusDays(1)).ToInstant();
        var entries = db.AuditEntries.AsNoTracking().Where(entry => entry.At >= start && entry.At < end);
        if (kind is not null && Kinds[kind] is var wanted)
            entries = entries.Where(entry => entry.Kind == wanted);
        var rows = await entries.OrderByDescending(entry => entry.At).ThenByDescending(entry => entry.Id)
            .Take(MostEntries).ToListAsync(cancellation);
        return TypedResults.Ok(rows.ConvertAll(entry => new AuditView(
            entry.At, entry.By, entry.PersonId, entry.Kind, entry.RowId, Json(entry.Before), Json(entry.After))));
    }

    private static JsonElement? Json(string? text) =>
        text is null ? null : JsonSerializer.Deserialize<JsonElement>(text);
}
