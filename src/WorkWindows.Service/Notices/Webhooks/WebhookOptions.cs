using System.ComponentModel.DataAnnotations;

namespace WorkWindows.Service.Notices.Webhooks;

/// <summary>
/// How signed requests leave, from the section 'Webhooks' (in the environment Webhooks__TimeoutSeconds and so on).
/// </summary>
public sealed class WebhookOptions
{
    public const string Section = "Webhooks";

    /// <summary>Seconds that one request may take.</summary>
    [Range(1, 60)]
    public int TimeoutSeconds { get; set; } = 15;

    /// <summary>
    /// Whether requests may go to addresses of this machine and of private networks, and there without TLS: for
    /// development, and where all who choose addresses are trusted with the network that the service stands in.
    /// </summary>
    public bool AllowPrivateAddresses { get; set; }
}
