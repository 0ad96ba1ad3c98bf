using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text.Json;
using WorkWindows.Engine.Land;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>Reads the site flags of a feature.</summary>
internal static class SiteFlagReader
{
    private static readonly FrozenDictionary<string, SiteFlag> Flags = Enum.GetValues<SiteFlag>()
        .ToFrozenDictionary(flag => JsonNamingPolicy.KebabCaseLower.ConvertName(flag.ToString()));

    private static readonly string FlagNames = $"an array of: {string.Join(", ", Flags.Keys.Order())}";

    /// <returns>Null where there is no word of flags.</returns>
    public static ImmutableSortedSet<SiteFlag>? Read(FeatureFields fields)
    {
        if (fields.Find("flags") is null)
            return null;
        var flags = ImmutableSortedSet.CreateBuilder<SiteFlag>();
        foreach (var element in fields.Array("flags", FlagNames))
        {
            if (element.ValueKind == JsonValueKind.String && Flags.TryGetValue(element.ToString(), out var flag))
                flags.Add(flag);
            else
                fields.Fault("flags", element.ToString(), FlagNames);
        }
        return flags.ToImmutable();
    }
}
