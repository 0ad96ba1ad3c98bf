using NodaTime;
using NodaTime.TimeZones;

namespace WorkWindows.Service.Notices.Choices;

/// <summary>The hours of a day in which a person is not to be written to, in the person's own zone.</summary>
/// <param name="From">The first moment of quiet.</param>
/// <param name="Until">
/// The first moment after it; on the next day when it is not later than <paramref name="From"/>.
/// </param>
public readonly record struct QuietHours(LocalTime From, LocalTime Until)
{
    /// <summary>When the quiet that a moment lies in ends; the moment itself when it lies in none.</summary>
    /// <remarks>An end that a clock change leaves out comes when the clock has been put forward.</remarks>
    public Instant Over(Instant moment, DateTimeZone zone)
    {
        var local = moment.InZone(zone).LocalDateTime;
        var passesMidnight = Until <= From;
        var isQuiet = passesMidnight
            ? local.TimeOfDay >= From || local.TimeOfDay < Until
            : local.TimeOfDay >= From && local.TimeOfDay < Until;
        if (!isQuiet)
            return moment;
        var day = passesMidnight && local.TimeOfDay >= From ? local.Date.PlusDays(1) : local.Date;
        // A clock that is put back repeats an hour: quiet ends with the second of two.
        var ends = zone.ResolveLocal(day + Until, Resolvers.CreateMappingResolver(
            Resolvers.ReturnLater, Resolvers.ReturnStartOfIntervalAfter));
        return Instant.Max(moment, ends.ToInstant());
    }
}
