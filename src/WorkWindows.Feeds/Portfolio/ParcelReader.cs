using System.Text.Json;
using NodaTime;
using WorkWindows.Engine.Land;
using WorkWindows.Feeds.TimeZones;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>Reads one feature of a parcel file.</summary>
internal static class ParcelReader
{
    /// <summary>From below the Salton Sea to above Denali.</summary>
    private const double LowestM = -100, HighestM = 6_200;

    /// <returns>The parcel; null if anything of it is wrong, each with a fault.</returns>
    public static ParcelRow? Read(LocatedFeature located, int number, FaultCollector faults)
    {
        var properties = located.Feature.Member("properties") ?? default;
        var item = properties.Member("parcel") is { ValueKind: JsonValueKind.String } key
            ? key.ToString()
            : $"feature {number}";
        var fields = new FeatureFields(properties, located.Line, item, faults);
        var property = fields.Required("property", FieldText.IsKey, FieldText.Key);
        var parcel = fields.Required("parcel", FieldText.IsKey, FieldText.Key);
        var state = fields.Required(
            "state", UsStates.FipsByPostalCode.ContainsKey, "the two capital letters of a state, such as MI");
        var county = County(state, fields);
        var flags = SiteFlagReader.Read(fields);
        var stand = StandReader.Read(fields);
        var position = ParcelSiteReader.Read(located.Feature, fields);
        var zone = fields.Optional("timeZone", name => DateTimeZoneProviders.Tzdb.GetZoneOrNull(name) is not null,
            "an IANA time zone such as America/Detroit, or nothing: then county and position give it");
        var elevation = fields.Number("elevationM", LowestM, HighestM, "metres above sea level");
        var propertyName = fields.Optional("propertyName", FieldText.IsName, FieldText.Name);
        var parcelName = fields.Optional("parcelName", FieldText.IsName, FieldText.Name);
        var landowner = fields.Optional("landowner", FieldText.IsName, FieldText.Name);
        var email = fields.Optional("landownerEmail", FieldText.IsMail, FieldText.Mail);
        if (property is null || parcel is null || state is null || county is null || position is not { } found)
            return null;
        return new(located.Line, property, propertyName, parcel, parcelName, landowner, email, county,
            state, zone ?? CountyTimeZone.Find(county) ?? found.TimeZone, zone is not null, flags, stand, found.Site, elevation);
    }

    private static string? County(string? state, FeatureFields fields)
    {
        var stateFips = state is null ? null : UsStates.FipsByPostalCode[state];
        return fields.Required(
            "countyFips",
            text => text.Length == 5 && text.All(char.IsAsciiDigit)
                && (stateFips is null || text.StartsWith(stateFips, StringComparison.Ordinal)),
            stateFips is null
                ? "the county's five digits as text, such as \"26065\""
                : $"the county's five digits as text, beginning with {stateFips} for {state}");
    }
}
