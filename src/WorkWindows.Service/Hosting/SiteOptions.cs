using System.ComponentModel.DataAnnotations;

namespace WorkWindows.Service.Hosting;

/// <summary>Where people reach the pages, from the section 'Site' (in the environment Site__Address).</summary>
public sealed class SiteOptions : IValidatableObject
{
    public const string Section = "Site";

    /// <summary>What links in mails begin with, such as https://woods.example.org; without it there are none.</summary>
    public string? Address { get; set; }

    /// <param name="path">A path that begins with a slash.</param>
    /// <returns>Where the page is reached; null when that is not known.</returns>
    public string? PageAddress(string path) => Address is null ? null : Address.TrimEnd('/') + path;

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (Address is not null && !(Uri.TryCreate(Address, UriKind.Absolute, out var uri)
            && uri.Scheme is "https" or "http" && uri is { Query: "", Fragment: "" }))
        {
            yield return new(
                "Site:Address must be the address of the pages such as https://woods.example.org, or not be set.",
                [nameof(Address)]);
        }
    }
}
