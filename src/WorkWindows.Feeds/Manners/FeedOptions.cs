using System.ComponentModel.DataAnnotations;

namespace WorkWindows.Feeds.Manners;

/// <summary>How the services that give weather are asked: section Feeds.</summary>
public sealed class FeedOptions : IValidatableObject
{
    public const string Section = "Feeds";

    /// <summary>
    /// Who asks, with an address to write to, such as <c>(woods.example.org, office@example.org)</c>. Without it
    /// nothing is asked.
    /// </summary>
    public string UserAgent { get; set; } = "";

    /// <summary>Whether to ask; by default, when there is a user agent.</summary>
    public bool? Enabled { get; set; }

    public bool IsEnabled => Enabled ?? UserAgent.Length > 0;

    /// <summary>Requests a host, UTC day and process, retries and redirects included: 5000.</summary>
    [Range(1, 1_000_000)]
    public int RequestsADay { get; set; } = 5000;

    /// <summary>The largest reply that is read, unpacked, in MB: 32.</summary>
    [Range(1, 256)]
    public int LargestReplyMb { get; set; } = 32;

    /// <summary>Replies that are kept in memory while they are fresh, in MB: 32.</summary>
    [Range(1, 1024)]
    public int KeptRepliesMb { get; set; } = 32;

    /// <summary>Until an attempt has its whole reply, in seconds: 30.</summary>
    [Range(1, 600)]
    public int AttemptSeconds { get; set; } = 30;

    /// <summary>All attempts of a request and the pauses between them, in seconds: 120.</summary>
    [Range(1, 3600)]
    public int TotalSeconds { get; set; } = 120;

    /// <summary>Attempts after the first, where a fault may pass: 3.</summary>
    [Range(1, 10)]
    public int Retries { get; set; } = 3;

    /// <summary>The first pause in seconds; each further one is twice as long, give or take some chance: 2.</summary>
    [Range(1, 60)]
    public int FirstPauseSeconds { get; set; } = 2;

    /// <summary>
    /// The longest pause that a server may ask for within a request, in seconds: 30. If it asks for more, the request
    /// fails at once and the host is left alone for so long.
    /// </summary>
    [Range(0, 600)]
    public int LongestPauseSeconds { get; set; } = 30;

    /// <summary>Attempts within ten minutes after which a host of which nine in ten fail is left alone: 8.</summary>
    [Range(2, 1000)]
    public int AttemptsBeforeBreak { get; set; } = 8;

    /// <summary>For how long it is left alone then, in seconds: 300.</summary>
    [Range(1, 3600)]
    public int BreakSeconds { get; set; } = 300;

    /// <summary>US National Weather Service: forecasts and alerts.</summary>
    [Required]
    public Uri NationalWeatherService { get; set; } = new("https://api.weather.gov/");

    /// <summary>Open-Meteo, forecasts.</summary>
    [Required]
    public Uri OpenMeteoForecast { get; set; } = new("https://api.open-meteo.com/");

    /// <summary>Open-Meteo, past days.</summary>
    [Required]
    public Uri OpenMeteoArchive { get; set; } = new("https://archive-api.open-meteo.com/");

    /// <summary>The key of a paid plan of Open-Meteo; a secret. None by default.</summary>
    public string OpenMeteoKey { get; set; } = "";

    /// <summary>Access Data Service of NOAA's National Centers for Environmental Information.</summary>
    [Required]
    public Uri Ncei { get; set; } = new("https://www.ncei.noaa.gov/access/services/data/");

    /// <summary>Applied Climate Information System of the Regional Climate Centers.</summary>
    [Required]
    public Uri Acis { get; set; } = new("https://data.rcc-acis.org/");

    /// <summary>Station files of GHCN-Daily; <c>{station}</c> stands for the station's id.</summary>
    [Required]
    public string GhcnFiles { get; set; } =
        "https://www.ncei.noaa.gov/pub/data/ghcn/daily/by_station/{station}.csv.gz";

    /// <summary>Files of one's own (docs/feeds/plain-csv.md); <c>{station}</c> as above. None by default.</summary>
    public string PlainCsvFiles { get; set; } = "";

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (IsEnabled && string.IsNullOrWhiteSpace(UserAgent))
        {
            yield return new(
                "Feeds:Enabled is true, so Feeds:UserAgent must say who asks, with a mail address to write to.",
                [nameof(UserAgent)]);
        }
        if (TotalSeconds < AttemptSeconds)
            yield return new("Feeds:TotalSeconds must be at least Feeds:AttemptSeconds.", [nameof(TotalSeconds)]);
        foreach (var (name, text) in new[] { (nameof(GhcnFiles), GhcnFiles), (nameof(PlainCsvFiles), PlainCsvFiles) })
        {
            if (text.Length > 0 && !IsTemplate(text))
            {
                yield return new(
                    $"Feeds:{name} must be an http or https address in which {{station}} stands for the station's id.",
                    [name]);
            }
        }
    }

    private static bool IsTemplate(string text) =>
        text.Contains("{station}", StringComparison.Ordinal)
        && Uri.TryCreate(
            text.Replace("{station}", "USW00014922", StringComparison.Ordinal), UriKind.Absolute, out var uri)
        && (uri.Scheme == Uri.UriSchemeHttp || uri.Scheme == Uri.UriSchemeHttps);
}
