using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Accounts;

/// <summary>Signs a person in by mail address and password.</summary>
public sealed class SignInAttempt(
    WorkWindowsDb db, CurrentOrganization organization, SignInManager<Person> signIn, UserManager<Person> people)
{
    /// <summary>Compared with when nobody has the address, so that the answer takes as long either way.</summary>
    private static readonly Lazy<string> NobodysHash =
        new(() => new PasswordHasher<Person>().HashPassword(null!, $"{Guid.NewGuid()}"));

    public async Task<SignInResult> SignInAsync(string email, string password, CancellationToken cancellation)
    {
        var name = people.NormalizeName(email);
        var found = await db.Database
            .SqlQuery<Guid?>($"""select organization_of_login({name}) as "Value" """)
            .SingleAsync(cancellation);
        if (found is not { } organizationId)
        {
            people.PasswordHasher.VerifyHashedPassword(null!, NobodysHash.Value, password);
            return SignInResult.Failed;
        }

        organization.Set(organizationId);
        return await signIn.PasswordSignInAsync(email, password, isPersistent: true, lockoutOnFailure: true);
    }
}
