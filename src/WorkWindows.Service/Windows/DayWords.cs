using System.Globalization;
using System.Text.RegularExpressions;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Windows;

/// <summary>
/// How pages write days and counts. Days are written as the region of whoever asks does: the browser says which it is, and the
/// culture of the request is set by that.
/// </summary>
public static partial class DayWords
{
    /// <summary>Writes the month before the day; all others that are told apart do not.</summary>
    public const string MonthFirst = "en-US";

    /// <summary>The regions that are told apart.</summary>
    public static readonly IReadOnlyList<string> Regions = [MonthFirst, "en-CA", "en-GB", "en-IE", "en-AU", "en-NZ"];

    private static readonly LocalDatePattern ShortMonthFirst = LocalDatePattern.CreateWithInvariantCulture("ddd MMM d");
    private static readonly LocalDatePattern LongMonthFirst = LocalDatePattern.CreateWithInvariantCulture("ddd MMM d, uuuu");
    private static readonly LocalDateTimePattern MomentMonthFirst =
        LocalDateTimePattern.CreateWithInvariantCulture("ddd MMM d, uuuu, H:mm");
    private static readonly LocalDatePattern Short = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM");
    private static readonly LocalDatePattern Long = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM uuuu");
    private static readonly LocalDateTimePattern Moment =
        LocalDateTimePattern.CreateWithInvariantCulture("ddd d MMM uuuu, H:mm");
    private static readonly LocalDatePattern Address = LocalDatePattern.Iso;

    private static bool IsMonthFirst => CultureInfo.CurrentCulture.Name == MonthFirst;

    /// <summary>What is stored has the day first, whoever's request it is made in.</summary>
    public static T Stored<T>(Func<T> make)
    {
        var asked = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        try
        {
            return make();
        }
        finally
        {
            CultureInfo.CurrentCulture = asked;
        }
    }

    /// <summary>As in Thu 26 Nov, or Thu Nov 26.</summary>
    public static string Of(LocalDate day) => (IsMonthFirst ? ShortMonthFirst : Short).Format(day);

    /// <summary>As in Thu 26 Nov 2026, or Thu Nov 26, 2026.</summary>
    public static string WithYear(LocalDate day) => (IsMonthFirst ? LongMonthFirst : Long).Format(day);

    /// <summary>With its year only where that is not the year of today.</summary>
    public static string Of(LocalDate day, LocalDate today) =>
        day.Year == today.Year ? Of(day) : WithYear(day);

    /// <summary>
    /// The same sentence with its days as the region writes them: '24 January' as 'January 24', '1 Oct 2026' as 'Oct 1, 2026',
    /// '2 to 5 May' as 'May 2 to 5'. Rules and what is stored have the day first.
    /// </summary>
    public static string In(string text) => !IsMonthFirst ? text : DayFirst().Replace(text, match =>
        $"{match.Groups["month"].Value} {match.Groups["from"].Value}{match.Groups["join"].Value}{match.Groups["day"].Value}"
        + (match.Groups["year"].Success ? $", {match.Groups["year"].Value}" : ""));

    /// <summary>As in Thu 26 Nov 2026, 2:00.</summary>
    public static string At(Instant instant, DateTimeZone zone) => (IsMonthFirst ? MomentMonthFirst : Moment).Format(instant.InZone(zone).LocalDateTime);

    /// <summary>The address of a task's page of a day.</summary>
    public static string AddressOf(Guid task, LocalDate day) => $"/tasks/{task}/days/{Address.Format(day)}";

    public static string ClassOf(DayState state) => Wording.Of(state);

    public static string Count(int count, string one, string many) => count == 1 ? $"1 {one}" : $"{count} {many}";

    [GeneratedRegex(
        @"\b(?:(?<from>\d{1,2})(?<join> to |[-–]))?(?<day>\d{1,2}) (?<month>Jan(?:uary)?|Feb(?:ruary)?|Mar(?:ch)?|Apr(?:il)?|May|June?|July?|Aug(?:ust)?|Sep(?:tember)?|Oct(?:ober)?|Nov(?:ember)?|Dec(?:ember)?)\b(?: (?<year>\d{4}))?",
        RegexOptions.CultureInvariant)]
    private static partial Regex DayFirst();
}
