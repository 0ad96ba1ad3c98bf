using System.Security.Claims;
using System.Security.Cryptography;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Accounts;

/// <summary>Lets machines in that send 'Authorization: Bearer' with a key that has not been revoked.</summary>
internal sealed class ApiKeyAuthentication(
    IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory loggers, UrlEncoder encoder,
    WorkWindowsDb db, CurrentOrganization organization)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, loggers, encoder)
{
    public new const string Scheme = "ApiKey";

    private const string Start = "Bearer ";

    public static bool Announced(HttpRequest request) => request.Headers.Authorization.Count > 0;

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        var header = $"{Request.Headers.Authorization}";
        if (!header.StartsWith(Start, StringComparison.OrdinalIgnoreCase)
            || ApiKeySecret.Parse(header[Start.Length..].Trim()) is not { } given)
        {
            return AuthenticateResult.Fail("Not an API key.");
        }

        organization.Set(given.OrganizationId);
        var key = await db.ApiKeys.AsNoTracking()
            .SingleOrDefaultAsync(key => key.Id == given.KeyId && key.RevokedAt == null, Context.RequestAborted);
        if (key is null || !CryptographicOperations.FixedTimeEquals(key.SecretHash, given.Hash))
            return AuthenticateResult.Fail("Unknown or revoked API key.");

        var identity = new ClaimsIdentity(
            [
                new Claim(Caller.OrganizationClaim, $"{key.OrganizationId}"),
                new Claim(ClaimTypes.Role, $"{key.Role}"),
                new Claim(ClaimTypes.Name, key.Name),
            ],
            Scheme);
        return AuthenticateResult.Success(new(new ClaimsPrincipal(identity), Scheme));
    }
}
