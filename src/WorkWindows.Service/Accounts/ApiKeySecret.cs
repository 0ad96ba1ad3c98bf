using System.Buffers.Text;
using System.Security.Cryptography;

namespace WorkWindows.Service.Accounts;

/// <summary>The text a machine signs in with: ww.organization.key.secret.</summary>
internal sealed record ApiKeySecret(Guid OrganizationId, Guid KeyId, byte[] Secret)
{
    private const string Prefix = "ww";
    private const int SecretBytes = 32;

    public byte[] Hash => SHA256.HashData(Secret);

    public static ApiKeySecret Draw(Guid organizationId, Guid keyId) =>
        new(organizationId, keyId, RandomNumberGenerator.GetBytes(SecretBytes));

    /// <returns>The parts, or null for a text of another form.</returns>
    public static ApiKeySecret? Parse(string text) =>
        text.Split('.') is [Prefix, var organization, var key, var secret]
        && Guid.TryParseExact(organization, "N", out var organizationId)
        && Guid.TryParseExact(key, "N", out var keyId)
        && Base64Url.IsValid(secret, out var length) && length == SecretBytes
            ? new(organizationId, keyId, Base64Url.DecodeFromChars(secret))
            : null;

    public override string ToString() =>
        $"{Prefix}.{OrganizationId:N}.{KeyId:N}.{Base64Url.EncodeToString(Secret)}";
}
