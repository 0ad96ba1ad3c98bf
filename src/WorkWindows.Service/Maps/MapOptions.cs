using System.ComponentModel.DataAnnotations;

namespace WorkWindows.Service.Maps;

/// <summary>What lies under maps, from the section 'Map' (in the environment Map__Tiles); nothing unless it is set.</summary>
public sealed class MapOptions : IValidatableObject
{
    public const string Section = "Map";

    /// <summary>The address of map tiles of 256 × 256 pixels, such as https://tiles.example.org/{z}/{x}/{y}.png.</summary>
    public string? Tiles { get; set; }

    /// <summary>Who is to be named on the map for them.</summary>
    public string? Credit { get; set; }

    /// <summary>Where browsers may fetch pictures from, beside the service itself; null for nowhere.</summary>
    public string? TileOrigin => Tiles is null ? null : new Uri(Plain(Tiles)).GetLeftPart(UriPartial.Authority);

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (Tiles is null)
            yield break;
        if (!Tiles.Contains("{z}", StringComparison.Ordinal) || !Tiles.Contains("{x}", StringComparison.Ordinal)
            || !Tiles.Contains("{y}", StringComparison.Ordinal)
            || !Uri.TryCreate(Plain(Tiles), UriKind.Absolute, out var uri) || uri.Scheme is not ("https" or "http"))
        {
            yield return new(
                "Map:Tiles must be an address such as https://tiles.example.org/{z}/{x}/{y}.png, or not be set.", [nameof(Tiles)]);
        }
        if (string.IsNullOrWhiteSpace(Credit))
            yield return new("Map:Credit must name whoever makes the tiles where Map:Tiles is set.", [nameof(Credit)]);
    }

    private static string Plain(string tiles) => tiles.Replace("{", "", StringComparison.Ordinal).Replace("}", "", StringComparison.Ordinal);
}
