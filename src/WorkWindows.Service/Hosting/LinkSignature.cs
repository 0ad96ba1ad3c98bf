using System.Buffers.Text;
using System.Security.Cryptography;

namespace WorkWindows.Service.Hosting;

/// <summary>Signs what an address says with HMAC-SHA-256, for people who do not sign in.</summary>
internal static class LinkSignature
{
    public static string Of(byte[] key, byte[] said) => Base64Url.EncodeToString(HMACSHA256.HashData(key, said));

    /// <summary>Compares in a time that says nothing of where they differ.</summary>
    public static bool IsOf(byte[] key, byte[] said, string? signature) =>
        signature is not null && Base64Url.IsValid(signature)
        && CryptographicOperations.FixedTimeEquals(Base64Url.DecodeFromChars(signature), HMACSHA256.HashData(key, said));
}
