using System.Text.Json;
using Microsoft.AspNetCore.Http.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Audit;

/// <summary>Writes down who changed what. The caller saves: a change and its entry are stored together.</summary>
public sealed class AuditLog(WorkWindowsDb db, Caller caller, IClock clock, IOptions<JsonOptions> json)
{
    /// <param name="kind">What the row is.</param>
    /// <param name="rowId">The row.</param>
    /// <param name="before">What it said; null when it is created.</param>
    /// <param name="after">What it says now; null when it is deleted.</param>
    /// <param name="cancellation">Ends the query.</param>
    public async Task AddAsync<T>(AuditKind kind, Guid rowId, T? before, T? after, CancellationToken cancellation)
        where T : class
    {
        var name = caller.PersonId is { } person
            ? await db.People.Where(row => row.Id == person).Select(row => row.DisplayName).SingleAsync(cancellation)
            : caller.Name;
        db.Add(new AuditEntry
        {
            At = clock.GetCurrentInstant(),
            PersonId = caller.PersonId,
            By = name,
            Kind = kind,
            RowId = rowId,
            Before = Text(before),
            After = Text(after),
        });
    }

    private string? Text<T>(T? row) where T : class =>
        row is null ? null : JsonSerializer.Serialize(row, json.Value.SerializerOptions);
}
