using System.ComponentModel.DataAnnotations;

namespace WorkWindows.Service.Notices;

/// <summary>How mail leaves, from the section 'Mail' (in the environment Mail__Host and so on).</summary>
public sealed class MailOptions : IValidatableObject
{
    public const string Section = "Mail";

    /// <summary>465 is the port on which TLS begins with the connection.</summary>
    public const int ImplicitTlsPort = 465;

    /// <summary>The SMTP server. Without one, mails become files in the outbox folder.</summary>
    public string? Host { get; set; }

    [Range(1, 65535)]
    public int Port { get; set; } = 587;

    /// <summary>The name to sign in with, or null to send without signing in.</summary>
    public string? User { get; set; }

    public string? Password { get; set; }

    /// <summary>
    /// Whether the connection must be encrypted: from the start on port 465, by STARTTLS on any other.
    /// </summary>
    public bool UseTls { get; set; } = true;

    /// <summary>The address that notices come from. Needed when there is a server.</summary>
    [EmailAddress]
    public string? From { get; set; }

    /// <summary>Makes Message-IDs and calendar entries unique; by default the domain of <see cref="From"/>.</summary>
    [RegularExpression("[A-Za-z0-9.-]+", ErrorMessage = "Mail:Domain must be a domain name such as example.org.")]
    public string? Domain { get; set; }

    /// <summary>
    /// Seconds that the sending of one mail may take; less than a lease, so that no second worker begins.
    /// </summary>
    [Range(1, 240)]
    public int TimeoutSeconds { get; set; } = 60;

    /// <summary>Whether mails reach anybody, and are not only files.</summary>
    public bool HasServer => !string.IsNullOrEmpty(Host);

    public string SenderAddress => From ?? "workwindows@localhost";

    public string MessageDomain => Domain ?? SenderAddress[(SenderAddress.LastIndexOf('@') + 1)..];

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (!string.IsNullOrEmpty(Host) && string.IsNullOrEmpty(From))
        {
            yield return new(
                "Mail:Host is set, so Mail:From must be set to the address that notices come from.", [nameof(From)]);
        }
        if (!string.IsNullOrEmpty(User) && string.IsNullOrEmpty(Password))
            yield return new("Mail:User is set, so Mail:Password must be set.", [nameof(Password)]);
    }
}
