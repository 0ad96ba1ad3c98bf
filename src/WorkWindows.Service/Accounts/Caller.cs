using System.Security.Claims;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Accounts;

/// <summary>Who makes the request.</summary>
/// <param name="OrganizationId">The organization the caller belongs to.</param>
/// <param name="Role">What the caller may do.</param>
/// <param name="PersonId">The person, or null for a machine.</param>
/// <param name="Name">The sign-in name of the person, or the name of the machine's key.</param>
public sealed record Caller(Guid OrganizationId, Role Role, Guid? PersonId, string Name)
{
    internal const string OrganizationClaim = "organization";

    /// <returns>The caller, or null for someone who has not signed in.</returns>
    public static Caller? Of(ClaimsPrincipal principal)
    {
        if (principal.FindFirstValue(OrganizationClaim) is not { } organization)
            return null;
        var person = principal.FindFirstValue(ClaimTypes.NameIdentifier);
        return new Caller(
            Guid.Parse(organization),
            Enum.Parse<Role>(principal.FindFirstValue(ClaimTypes.Role)!),
            person is null ? null : Guid.Parse(person),
            principal.FindFirstValue(ClaimTypes.Name) ?? "");
    }

    internal static Caller OfRequest(IServiceProvider scope) =>
        Of(scope.GetRequiredService<IHttpContextAccessor>().HttpContext!.User)
        ?? throw new InvalidOperationException("Nobody has signed in: the endpoint must ask for it.");

    internal static void EnterOrganization(HttpContext context, ClaimsPrincipal principal)
    {
        if (Of(principal) is { } caller)
            context.RequestServices.GetRequiredService<CurrentOrganization>().Set(caller.OrganizationId);
    }
}
