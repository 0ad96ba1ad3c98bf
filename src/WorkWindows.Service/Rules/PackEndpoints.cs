using System.Text;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Rules;

/// <summary>A rule pack of the organization as the API and the audit show it.</summary>
/// <param name="Id">Its key.</param>
/// <param name="Version">Its version.</param>
/// <param name="Hash">SHA-256 of its text.</param>
/// <param name="PropertyId">The property that it is for; null for all.</param>
/// <param name="ChangedAt">When this text was handed in; null for a pack that comes with the service.</param>
/// <param name="ChangedById">Who did; null for a machine.</param>
/// <param name="IsShipped">It comes with the service.</param>
public sealed record PackView(
    string Id, string Version, string Hash, Guid? PropertyId, Instant? ChangedAt, Guid? ChangedById, bool IsShipped)
{
    internal static PackView Of(OrganizationPack pack) => new(
        pack.PackId, pack.Version, pack.Hash, pack.PropertyId, pack.ChangedAt, pack.ChangedById, false);
}

internal static class PackEndpoints
{
    private const int LimitMegabytes = 1;
    private const string Yaml = "application/yaml";

    private static readonly UTF8Encoding StrictUtf8 = new(false, throwOnInvalidBytes: true);

    public static void MapPacks(this IEndpointRouteBuilder app)
    {
        var packs = app.MapGroup("/api/rule-packs").WithTags("Rule packs");
        packs.MapGet("", ListAsync).RequireAuthorization(Access.Work)
            .WithSummary("Lists the rule packs of the service, the organization and its properties.");
        packs.MapGet("/{packId}", TextAsync).RequireAuthorization(Access.Work)
            .WithSummary("Gives the text of a rule pack.");
        packs.MapPut("/{packId}", PutAsync).RequireAuthorization(Access.Plan)
            .WithSummary("Stores a rule pack of the organization, or of one property; with a fault nothing changes.")
            .Accepts<IFormFile>(Yaml, ["text/yaml", "text/plain", .. HandedInFile.AnyType]);
        packs.MapDelete("/{packId}", DeleteAsync).RequireAuthorization(Access.Plan)
            .WithSummary("Removes a rule pack of the organization or of a property.");
    }

    private static async Task<List<PackView>> ListAsync(
        WorkWindowsDb db, RulePacks shipped, CancellationToken cancellation)
    {
        var own = await db.OrganizationPacks.AsNoTracking().OrderBy(pack => pack.PropertyId != null)
            .ThenBy(pack => pack.PackId).ToListAsync(cancellation);
        return
        [
            .. shipped.Packs.Select(pack => new PackView(pack.Id, pack.Version, pack.Hash, null, null, null, true)),
            .. own.Select(PackView.Of),
        ];
    }

    private static async Task<Results<ContentHttpResult, NotFound>> TextAsync(
        string packId, WorkWindowsDb db, RulePacks shipped, CancellationToken cancellation)
    {
        var text = shipped.Find(packId) is { } pack ? shipped.Texts[pack.Hash]
            : await db.OrganizationPacks.Where(row => row.PackId == packId)
                .Select(row => db.StoredPacks.Single(stored => stored.Hash == row.Hash).Text)
                .SingleOrDefaultAsync(cancellation);
        return text is null ? TypedResults.NotFound() : TypedResults.Text(text, Yaml);
    }

    private static async Task<Results<Ok<PackView>, NotFound, ValidationProblem, ProblemHttpResult>> PutAsync(
        string packId, Guid? property, HttpRequest request, PackHandler packs, CancellationToken cancellation)
    {
        var (content, problem) = await HandedInFile.ReadAsync(request, LimitMegabytes, cancellation);
        if (content is null)
            return problem!;
        string text;
        try
        {
            text = StrictUtf8.GetString(content.ToArray());
        }
        catch (DecoderFallbackException)
        {
            return TypedResults.Problem(
                "Save the file as UTF-8. Nothing was stored.", statusCode: StatusCodes.Status400BadRequest,
                title: "The text is not UTF-8.");
        }
        return (await packs.PutAsync(packId, property, text, cancellation)).Answer(PackView.Of);
    }

    private static async Task<Results<NoContent, NotFound, ValidationProblem, ProblemHttpResult>> DeleteAsync(
        string packId, PackHandler packs, CancellationToken cancellation) =>
        (await packs.DeleteAsync(packId, cancellation)).AnswerNothing();
}
