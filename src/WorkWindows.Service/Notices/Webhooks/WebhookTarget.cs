using System.Security.Cryptography;
using System.Text;

namespace WorkWindows.Service.Notices.Webhooks;

/// <summary>Where a person's signed requests go, and what they are signed with.</summary>
/// <param name="Address">An https address.</param>
/// <param name="Secret">'whsec_' and the key in base64.</param>
public sealed record WebhookTarget(string Address, string Secret)
{
    private const string SecretPrefix = "whsec_";

    /// <summary>Keys have 24 to 64 bytes (Standard Webhooks 1.0, 'Signature scheme').</summary>
    private const int ShortestKeyBytes = 24;

    private const int LongestKeyBytes = 64;

    /// <summary>Whether a text has the form of a secret.</summary>
    public static bool IsSecret(string text) => Key(text) is not null;

    /// <summary>
    /// Source: Standard Webhooks 1.0, 'Signature scheme': HMAC-SHA256 over id, time and body, with dots between.
    /// </summary>
    /// <param name="id">Names the message, the same at every attempt, without a dot.</param>
    /// <param name="unixSeconds">The time of the attempt.</param>
    /// <param name="body">The body as it is sent.</param>
    /// <returns>The value of the header webhook-signature.</returns>
    /// <exception cref="InvalidOperationException">The secret has not the form of one.</exception>
    public string Sign(string id, long unixSeconds, string body)
    {
        var key = Key(Secret) ?? throw new InvalidOperationException("The secret of a webhook cannot be read.");
        var signed = HMACSHA256.HashData(key, Encoding.UTF8.GetBytes($"{id}.{unixSeconds}.{body}"));
        return $"v1,{Convert.ToBase64String(signed)}";
    }

    private static byte[]? Key(string secret)
    {
        if (!secret.StartsWith(SecretPrefix, StringComparison.Ordinal))
            return null;
        var key = new byte[LongestKeyBytes];
        return Convert.TryFromBase64String(secret[SecretPrefix.Length..], key, out var length)
            && length >= ShortestKeyBytes
            ? key[..length]
            : null;
    }
}
