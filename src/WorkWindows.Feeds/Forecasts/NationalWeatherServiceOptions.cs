using System.ComponentModel.DataAnnotations;

namespace WorkWindows.Feeds.Forecasts;

/// <summary>How the forecasts of the US National Weather Service are fetched.</summary>
public sealed class NationalWeatherServiceOptions
{
    /// <summary>Where the service answers; every request goes to this host, whatever a reply names.</summary>
    [Required]
    public Uri BaseAddress { get; set; } = new("https://api.weather.gov/");

    /// <summary>
    /// Who asks, with an address to write to, such as <c>(woods.example.org, office@example.org)</c>. The service
    /// refuses requests without it. No default.
    /// </summary>
    [Required]
    public string UserAgent { get; set; } = "";
}
