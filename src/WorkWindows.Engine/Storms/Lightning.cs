using NodaTime;

namespace WorkWindows.Engine.Storms;

/// <summary>The 30-30 rule: shelter at thirty seconds, back out thirty minutes after the last thunder.</summary>
/// <remarks>
/// Shelter is an enclosed building or a hard-topped vehicle; not trees, tents or open sheds. Sources: Texas Division of
/// Workers' Compensation, OSHA/NOAA fact sheet 3863 (in part as quoted).
/// </remarks>
public static class Lightning
{
    /// <summary>A flash whose thunder comes within this many seconds calls for shelter.</summary>
    public const double ShelterSeconds = 30;

    /// <summary>The time without thunder that ends it.</summary>
    public static Duration AllClearAfter { get; } = Duration.FromMinutes(30);

    /// <summary>How far the flash was, miles: a mile for five seconds.</summary>
    /// <param name="flashToBangSeconds">Seconds from the flash to its thunder.</param>
    public static double DistanceMiles(double flashToBangSeconds) => flashToBangSeconds / 5;

    /// <summary>Whether to take shelter; unknown seconds are near ones.</summary>
    /// <param name="flashToBangSeconds">Seconds from the flash to its thunder; NaN when not counted.</param>
    public static bool CallsForShelter(double flashToBangSeconds) => !(flashToBangSeconds > ShelterSeconds);

    /// <summary>When work may go on; each thunder starts the wait anew.</summary>
    /// <param name="thunders">The times at which it thundered, in any order.</param>
    /// <returns>The first moment that is clear, or null when it never thundered.</returns>
    public static Instant? AllClearAt(params ReadOnlySpan<Instant> thunders)
    {
        Instant? last = null;
        foreach (var thunder in thunders)
            last = last is { } before ? Instant.Max(before, thunder) : thunder;
        return last + AllClearAfter;
    }
}
