using System.Buffers.Text;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Identity;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Accounts;

/// <summary>Opens an organization with its first consultant, who then adds everybody else.</summary>
public sealed class OrganizationSetup(WorkWindowsDb db, CurrentOrganization current, UserManager<Person> people)
{
    private const int PasswordBytes = 15;

    /// <returns>
    /// The consultant's password, told only here; or why the consultant was refused, and nothing is stored.
    /// </returns>
    public async Task<(string? Password, IdentityResult Result)> CreateAsync(
        Organization organization, Person consultant, CancellationToken cancellation)
    {
        current.Set(organization.Id);
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        db.Add(organization);
        await db.SaveChangesAsync(cancellation);
        var password = Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(PasswordBytes));
        var result = await people.CreateAsync(consultant, password);
        if (!result.Succeeded)
            return (null, result);
        await transaction.CommitAsync(cancellation);
        return (password, result);
    }
}
