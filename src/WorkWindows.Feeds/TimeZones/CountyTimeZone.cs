using System.Collections.Frozen;

namespace WorkWindows.Feeds.TimeZones;

/// <summary>
/// The time zone of a county, where the state's zones are known by county. The law draws zones along county lines, so
/// this is exact where <see cref="TimeZoneLookup"/> may be some kilometres off: it gives Iron County, Michigan, the
/// Eastern zone.
/// </summary>
/// <remarks>
/// Source: 49 CFR part 71, and for the zones of Indiana the IANA time zone database, file northamerica. States that
/// are divided otherwise, such as Kentucky, are left to the position.
/// </remarks>
public static class CountyTimeZone
{
    private static readonly FrozenDictionary<string, string> States = new[]
    {
        (Zone: "America/New_York", Codes: "09 10 11 13 23 24 25 33 34 36 37 39 42 44 45 50 51 54"),
        (Zone: "America/Chicago", Codes: "05 17 19 22 27 28 29 55"),
        (Zone: "America/Detroit", Codes: "26"),
        (Zone: "America/Indiana/Indianapolis", Codes: "18"),
    }.SelectMany(zone => zone.Codes.Split(' '), (zone, code) => (code, zone.Zone))
        .ToFrozenDictionary(entry => entry.code, entry => entry.Zone);

    private static readonly FrozenDictionary<string, string> Counties = new[]
    {
        // Dickinson, Gogebic, Iron, Menominee.
        (Zone: "America/Menominee", Codes: "26043 26053 26071 26109"),
        // Gibson, Jasper, Lake, LaPorte, Newton, Porter, Posey, Spencer, Vanderburgh, Warrick.
        (Zone: "America/Chicago", Codes: "18051 18073 18089 18091 18111 18127 18129 18147 18163 18173"),
        // Starke; Perry; Crawford; Pike; Switzerland; Pulaski.
        (Zone: "America/Indiana/Knox", Codes: "18149"),
        (Zone: "America/Indiana/Tell_City", Codes: "18123"),
        (Zone: "America/Indiana/Marengo", Codes: "18025"),
        (Zone: "America/Indiana/Petersburg", Codes: "18125"),
        (Zone: "America/Indiana/Vevay", Codes: "18155"),
        (Zone: "America/Indiana/Winamac", Codes: "18131"),
        // Daviess, Dubois, Knox, Martin.
        (Zone: "America/Indiana/Vincennes", Codes: "18027 18037 18083 18101"),
    }.SelectMany(zone => zone.Codes.Split(' '), (zone, code) => (code, zone.Zone))
        .ToFrozenDictionary(entry => entry.code, entry => entry.Zone);

    /// <param name="countyFips">Five digits.</param>
    /// <returns>An IANA name, or null if the state's zones are not kept here.</returns>
    public static string? Find(string countyFips)
    {
        ArgumentNullException.ThrowIfNull(countyFips);
        return Counties.GetValueOrDefault(countyFips)
            ?? (countyFips.Length == 5 ? States.GetValueOrDefault(countyFips[..2]) : null);
    }
}
