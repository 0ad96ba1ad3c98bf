using NodaTime;

namespace WorkWindows.Engine.Wildlife;

/// <summary>
/// When a bald eagles' nest comes to its stages, each from the earliest to the latest day, reckoned from the day on
/// which the pair starts at it.
/// </summary>
/// <param name="Laid">The eggs are laid: 15 to 30 days of courtship, then 5 to 10 of laying.</param>
/// <param name="Hatched">35 days after that.</param>
/// <param name="Fledged">70 to 91 days after that.</param>
/// <param name="Independent">The young feed themselves: 28 to 35 days after that.</param>
/// <remarks>
/// Source: US Fish and Wildlife Service, Midwest Region, "Nesting Start and End Dates". Its printed table is reckoned
/// in a leap year: in others the dates from March on are a day later.
/// </remarks>
public sealed record EagleNest(
    DateInterval Laid, DateInterval Hatched, DateInterval Fledged, DateInterval Independent)
{
    /// <param name="start">The first day of courtship or nest building.</param>
    public static EagleNest From(LocalDate start)
    {
        var laid = new DateInterval(start.PlusDays(15 + 5), start.PlusDays(30 + 10));
        var hatched = Later(laid, 35, 35);
        var fledged = Later(hatched, 70, 91);
        return new(laid, hatched, fledged, Later(fledged, 28, 35));
    }

    private static DateInterval Later(DateInterval stage, int earliestDays, int latestDays) =>
        new(stage.Start.PlusDays(earliestDays), stage.End.PlusDays(latestDays));
}
