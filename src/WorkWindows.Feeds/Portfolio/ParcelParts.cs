using System.Collections.Immutable;
using System.Text.Json;
using WorkWindows.Engine.Land;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>What can be said of a parcel outside a file, read by the rules of the file.</summary>
/// <param name="Site">Null without a geometry.</param>
/// <param name="PositionZone">The IANA zone of the site's position; null without one.</param>
/// <param name="Flags">Null where there is no word of flags.</param>
/// <param name="Stand">Empty where there is no inventory.</param>
/// <param name="Faults">What is wrong; its lines are those of no file.</param>
public sealed record ParcelParts(
    ParcelSite? Site,
    string? PositionZone,
    ImmutableSortedSet<SiteFlag>? Flags,
    ImmutableArray<StandRow> Stand,
    FaultReport Faults)
{
    /// <param name="parts">An object with any of the members geometry, flags and stand.</param>
    public static ParcelParts Read(JsonElement parts)
    {
        var faults = new FaultCollector();
        var fields = new FeatureFields(parts, line: null, item: null, faults);
        var site = fields.Find("geometry") is null ? null : ParcelSiteReader.Read(parts, fields);
        var (flags, stand) = (SiteFlagReader.Read(fields), StandReader.Read(fields));
        return new(site?.Site, site?.TimeZone, flags, stand, faults.ToReport());
    }
}
