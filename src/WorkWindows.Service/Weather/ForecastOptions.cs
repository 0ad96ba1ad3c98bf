using System.ComponentModel.DataAnnotations;

namespace WorkWindows.Service.Weather;

/// <summary>Whether and where forecasts are fetched: section Forecasts.</summary>
public sealed class ForecastOptions : IValidatableObject
{
    public const string Section = "Forecasts";

    /// <summary>Where the US National Weather Service answers.</summary>
    [Required]
    public Uri BaseAddress { get; set; } = new("https://api.weather.gov/");

    /// <summary>Who asks, such as <c>(woods.example.org, office@example.org)</c>; the service asks for it.</summary>
    public string UserAgent { get; set; } = "";

    /// <summary>Whether to fetch; without a word, when there is a user agent.</summary>
    public bool? Enabled { get; set; }

    public bool IsEnabled => Enabled ?? UserAgent.Length > 0;

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (IsEnabled && string.IsNullOrWhiteSpace(UserAgent))
        {
            yield return new(
                "Forecasts:Enabled is true, so Forecasts:UserAgent must say who asks, with a mail address to write to.",
                [nameof(UserAgent)]);
        }
    }
}
