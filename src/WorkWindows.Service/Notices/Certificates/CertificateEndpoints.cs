using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using WorkWindows.Service.Accounts;

namespace WorkWindows.Service.Notices.Certificates;

/// <summary>A certificate as it is handed in and shown.</summary>
/// <param name="Title">What it is, such as first aid and CPR; each of a person once.</param>
/// <param name="ValidUntil">The last day on which it is valid.</param>
public sealed record CertificateForm(string? Title, LocalDate? ValidUntil);

internal static class CertificateEndpoints
{
    public static void MapCertificates(this IEndpointRouteBuilder app)
    {
        var held = app.MapGroup("/api/people/{id:guid}/certificates").WithTags("People")
            .RequireAuthorization(Access.Plan);
        held.MapGet("", ReadAsync).WithSummary("The certificates of a person, by when they end.");
        held.MapPut("", SaveAsync).WithSummary("Replaces the certificates of a person.");
    }

    private static async Task<Results<Ok<IReadOnlyList<CertificateForm>>, NotFound>> ReadAsync(
        Guid id, CertificateHandler certificates, CancellationToken cancellation) =>
        await certificates.ReadAsync(id, cancellation) is { } found ? TypedResults.Ok(found) : TypedResults.NotFound();

    private static async
        Task<Results<Ok<IReadOnlyList<CertificateForm>>, NotFound, ValidationProblem, ProblemHttpResult>> SaveAsync(
            Guid id, IReadOnlyList<CertificateForm> forms, CertificateHandler certificates,
            CancellationToken cancellation) =>
        (await certificates.SaveAsync(id, forms, cancellation)).Answer(held => held);
}
