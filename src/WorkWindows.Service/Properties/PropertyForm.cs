using NodaTime;
using WorkWindows.Engine.Land;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Properties;

/// <summary>A property as someone wants it to be.</summary>
/// <param name="Key">The organization's own name for it; it stays what it is once the property exists.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="LandownerId">A person of the organization, or null for none.</param>
/// <param name="CountyFips">Five digits, the first two those of the state.</param>
/// <param name="State">Two-letter postal code.</param>
/// <param name="TimeZone">
/// An IANA name. Without one a new property takes that of its county or of its first parcel, and one that exists keeps
/// its own.
/// </param>
/// <param name="AccessNotes">How to get there and in.</param>
/// <param name="Emergency">Who is called from there; null leaves it as it is.</param>
/// <param name="Parcel">The first parcel of a new property.</param>
public sealed record PropertyForm(
    string? Key, string? Name, Guid? LandownerId, string? CountyFips, string? State, string? TimeZone,
    string? AccessNotes, EmergencyForm? Emergency, ParcelForm? Parcel)
{
    public const int LongestNotes = 4000;

    internal PropertyFields Check(FieldFaults faults)
    {
        var state = faults.Required("state", State, UsStates.FipsByPostalCode.ContainsKey,
            "the two capital letters of a state, such as MI");
        var stateFips = UsStates.FipsByPostalCode.GetValueOrDefault(state);
        return new(
            faults.Required("name", Name, FieldText.IsName, FieldText.Name),
            faults.Required(
                "countyFips", CountyFips,
                text => text.Length == 5 && text.All(char.IsAsciiDigit)
                    && (stateFips is null || text.StartsWith(stateFips, StringComparison.Ordinal)),
                stateFips is null
                    ? "the county's five digits as text, such as \"26065\""
                    : $"the county's five digits as text, beginning with {stateFips} for {state}"),
            state,
            faults.Optional("timeZone", TimeZone, name => DateTimeZoneProviders.Tzdb.GetZoneOrNull(name) is not null,
                "an IANA time zone such as America/Detroit"),
            CheckNotes(AccessNotes, faults),
            Emergency?.Check(faults, "emergency."));
    }

    internal static string? CheckNotes(string? notes, FieldFaults faults) => faults.Optional(
        "accessNotes", notes, text => text.Length <= LongestNotes, $"at most {LongestNotes} characters");
}

/// <summary>The fields of a form that was found right; the empty text stands where one was not.</summary>
internal sealed record PropertyFields(
    string Name, string CountyFips, string State, string? TimeZone, string? AccessNotes, EmergencyForm? Emergency);
