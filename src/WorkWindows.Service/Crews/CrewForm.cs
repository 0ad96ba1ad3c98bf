using NodaTime;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Crews;

/// <summary>A crew as someone wants it to be.</summary>
/// <param name="Name">Its name; each of the organization once.</param>
/// <param name="LeadId">The member who leads: a crew lead or a consultant.</param>
/// <param name="MemberIds">The others; the lead need not be named again.</param>
/// <param name="HoursPerDay">Hours of its working day, drives included; 8 where nothing is given.</param>
/// <param name="BaseLatitude">Where its days begin and end, degrees north; with the longitude or not at all.</param>
/// <param name="BaseLongitude">Degrees east.</param>
/// <param name="FirstDay">The first day on which it works, or null.</param>
/// <param name="LastDay">The last, or null.</param>
public sealed record CrewForm(
    string? Name, Guid? LeadId, IReadOnlyList<Guid>? MemberIds, decimal? HoursPerDay, double? BaseLatitude,
    double? BaseLongitude, LocalDate? FirstDay, LocalDate? LastDay)
{
    private const decimal UsualHours = 8;
    private const decimal LongestHours = 14;

    /// <summary>Everybody in it.</summary>
    internal IReadOnlyList<Guid> People =>
        [.. (MemberIds ?? []).Append(LeadId.GetValueOrDefault()).Where(id => id != Guid.Empty).Distinct()];

    internal decimal Hours => HoursPerDay ?? UsualHours;

    /// <returns>The name.</returns>
    internal string Check(FieldFaults faults)
    {
        var name = faults.Required("name", Name, FieldText.IsName, FieldText.Name);
        if (LeadId is null)
            faults.Add("leadId", null, "the id of a crew lead or consultant of the organization");
        if (HoursPerDay is not (null or (> 0 and <= LongestHours)))
            faults.Add("hoursPerDay", HoursPerDay, $"hours above 0 and up to {LongestHours}, or nothing for {UsualHours}");
        if (BaseLatitude is not (null or (>= -90 and <= 90)))
            faults.Add("baseLatitude", BaseLatitude, "degrees north from -90 to 90, or nothing");
        if (BaseLongitude is not (null or (>= -180 and <= 180)))
            faults.Add("baseLongitude", BaseLongitude, "degrees east from -180 to 180, or nothing");
        if (BaseLatitude is null != BaseLongitude is null)
            faults.Add(BaseLatitude is null ? "baseLatitude" : "baseLongitude", null, "both of the base, or neither");
        if (FirstDay > LastDay)
            faults.Add("lastDay", LastDay, $"{FirstDay:R} or a later day");
        return name;
    }
}
