using NodaTime;
using WorkWindows.Engine.Chances;
using WorkWindows.Engine.Days;
using WorkWindows.Service.Chances;

namespace WorkWindows.Service.Tests.Chances;

/// <summary>Chances of thirty years and as many days as are wanted, from 5 March 2026 on.</summary>
internal static class GivenChances
{
    public const int Members = 30;

    public static LocalDate Today { get; } = new(2026, 3, 5);

    /// <param name="each">How many years make each day workable; null where it is unknown in all of them.</param>
    /// <param name="opens">On which days after today it opens, for each year that it does.</param>
    /// <param name="closes">The same of its closing.</param>
    /// <param name="workableDays">The workable days left.</param>
    /// <param name="leafOut">On which days after today leaf-out comes.</param>
    /// <param name="openingUnknown">How many years do not know when it opens.</param>
    /// <param name="closingUnknown">How many do not know when it closes.</param>
    public static SeasonChances Of(
        int?[] each, IEnumerable<int> opens, IEnumerable<int> closes, double? workableDays = 12,
        IEnumerable<int>? leafOut = null, int openingUnknown = 0, int closingUnknown = 0) => new(
        new DaySpan(Today, each.Length), [.. Enumerable.Range(1996, Members).Reverse()], Members, [.. each.Select(Day)],
        Spread(opens, openingUnknown), Spread(closes, closingUnknown), Spread(leafOut ?? [], 0), workableDays,
        each.Contains(null) ? "gusts" : null);

    public static SeasonChances TooFew(int years) =>
        new(new DaySpan(Today, 300), [], years, [], default, default, default, null, null);

    /// <summary>The same number of years on each of some days.</summary>
    public static int?[] Days(int count, int? workable) => [.. Enumerable.Repeat(workable, count)];

    private static DayChance Day(int? workable) => workable is { } count
        ? new(count, 0, Members, (double)count / Members)
        : new(0, Members, Members, null);

    private static DateSpread Spread(IEnumerable<int> days, int unknown)
    {
        var dates = days.Select(day => (LocalDate?)Today.PlusDays(day)).ToList();
        return DateSpread.Of(
            [.. dates, .. Enumerable.Repeat<LocalDate?>(null, Members - unknown - dates.Count)], unknown);
    }
}
