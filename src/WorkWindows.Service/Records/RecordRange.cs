using NodaTime;
using WorkWindows.Engine.Days;

namespace WorkWindows.Service.Records;

/// <summary>How much of a record a chart shows.</summary>
/// <param name="Key">Its key in an address.</param>
/// <param name="Name">Its name for people.</param>
public sealed record RecordRange(string Key, string Name)
{
    /// <summary>
    /// In the first weeks of a winter there is little to see of it, and the last one is shown as well.
    /// </summary>
    private const int LeastDays = 60;

    private const int SeasonStartMonth = 9;

    private static readonly RecordRange Season = new("season", "This season");
    private static readonly RecordRange OneYear = new("1y", "1 year");
    private static readonly RecordRange FiveYears = new("5y", "5 years");
    private static readonly RecordRange Everything = new("all", "All");

    public static IReadOnlyList<RecordRange> All { get; } = [Season, OneYear, FiveYears, Everything];

    /// <returns>The season without a key; null for a key that is none.</returns>
    public static RecordRange? Find(string? key) =>
        string.IsNullOrEmpty(key) ? Season : All.FirstOrDefault(range => range.Key == key);

    /// <summary>The days up to yesterday.</summary>
    /// <param name="firstKnown">The first day of the record.</param>
    /// <param name="today">The day of asking.</param>
    public DaySpan Days(LocalDate firstKnown, LocalDate today)
    {
        var last = today.PlusDays(-1);
        var first = this == Season ? StartOfSeason(today.PlusDays(-LeastDays))
            : this == OneYear ? today.PlusYears(-1)
            : this == FiveYears ? today.PlusYears(-5)
            : LocalDate.Min(firstKnown, last);
        return DaySpan.Between(first, last);
    }

    private static LocalDate StartOfSeason(LocalDate day) =>
        new(day.Month < SeasonStartMonth ? day.Year - 1 : day.Year, SeasonStartMonth, 1);
}
