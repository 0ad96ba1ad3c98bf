using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Accounts;

/// <summary>Consultants give machines their keys and take them back.</summary>
internal static class ApiKeyEndpoints
{
    /// <param name="Name">What the machine is called.</param>
    /// <param name="Role">consultant, crew-lead or crew-member.</param>
    public sealed record NewKey(string? Name, string? Role);

    /// <param name="Id">Names the key when it is to be revoked.</param>
    /// <param name="Secret">What to send after 'Bearer'. It is shown this once.</param>
    public sealed record CreatedKey(Guid Id, string Secret);

    public sealed record KeyView(Guid Id, string Name, Role Role, Instant CreatedAt, Instant? RevokedAt);

    public static void MapApiKeys(this IEndpointRouteBuilder app)
    {
        var keys = app.MapGroup("/api/api-keys").WithTags("API keys").RequireAuthorization(Access.Plan);
        keys.MapGet("", ListAsync);
        keys.MapPost("", CreateAsync);
        keys.MapDelete("/{id:guid}", RevokeAsync);
    }

    private static async Task<List<KeyView>> ListAsync(WorkWindowsDb db, CancellationToken cancellation) =>
        await db.ApiKeys.OrderBy(key => key.CreatedAt).Select(key => new KeyView(
            key.Id, key.Name, key.Role, key.CreatedAt, key.RevokedAt)).ToListAsync(cancellation);

    private static async Task<Results<Created<CreatedKey>, ValidationProblem>> CreateAsync(
        NewKey request, Caller caller, WorkWindowsDb db, IClock clock, CancellationToken cancellation)
    {
        var faults = new FieldFaults();
        var name = faults.Required("name", request.Name, FieldText.IsName, FieldText.Name);
        var role = RoleWords.OfMachine(request.Role, faults);
        if (faults.Any)
            return faults.ToProblem();

        var id = Guid.CreateVersion7();
        var secret = ApiKeySecret.Draw(caller.OrganizationId, id);
        db.Add(new ApiKey
        {
            Id = id,
            Name = name,
            SecretHash = secret.Hash,
            Role = role,
            CreatedAt = clock.GetCurrentInstant(),
        });
        await db.SaveChangesAsync(cancellation);
        return TypedResults.Created($"/api/api-keys/{id}", new CreatedKey(id, $"{secret}"));
    }

    private static async Task<Results<NoContent, NotFound>> RevokeAsync(
        Guid id, WorkWindowsDb db, IClock clock, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var revoked = await db.ApiKeys.Where(key => key.Id == id && key.RevokedAt == null)
            .ExecuteUpdateAsync(key => key.SetProperty(row => row.RevokedAt, now), cancellation);
        return revoked == 1 ? TypedResults.NoContent() : TypedResults.NotFound();
    }
}
