using System.Security.Claims;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace WorkWindows.Service.Accounts;

/// <summary>What the sign-in cookie says of a person.</summary>
internal sealed class PersonClaims(UserManager<Person> people, IOptions<IdentityOptions> options)
    : UserClaimsPrincipalFactory<Person>(people, options)
{
    protected override async Task<ClaimsIdentity> GenerateClaimsAsync(Person user)
    {
        var identity = await base.GenerateClaimsAsync(user);
        identity.AddClaim(new Claim(Caller.OrganizationClaim, $"{user.OrganizationId}"));
        identity.AddClaim(new Claim(ClaimTypes.Role, $"{user.Role}"));
        return identity;
    }
}
