using NodaTime;
using WorkWindows.Service.Notices.Calendars;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Browser.Tests.Site;

/// <summary>The calendar of the crew lead of the third invented consultancy, over both days on which clocks change.</summary>
internal static class CalendarScenario
{
    private const string Key = "a-key-of-the-tests";

    /// <returns>The address of the feed.</returns>
    public static async Task<string> SeedAsync(WorkWindowsDb db, Guid organization, Guid lead)
    {
        db.Add(new NoticeSettings { PersonId = lead, CalendarKey = Key });
        db.AddRange(
            Working("a-7", new(2026, 3, 7)), Working("b-8", new(2026, 3, 8)),
            Working("c-31", new(2026, 10, 31)), Working("d-1", new(2026, 11, 1)),
            Whole("e", new(2026, 3, 6), new(2026, 3, 9), isCancelled: false),
            Whole("f", new(2026, 10, 30), new(2026, 11, 2), isCancelled: true));
        await db.SaveChangesAsync();
        return $"/calendars/{organization}.ics?key={Key}";

        CalendarDay Working(string key, LocalDate day) => Day(key, day, day, new(8, 0), false);

        CalendarDay Whole(string key, LocalDate first, LocalDate last, bool isCancelled) =>
            Day(key, first, last, null, isCancelled);

        CalendarDay Day(string key, LocalDate first, LocalDate last, LocalTime? from, bool isCancelled) => new()
        {
            PersonId = lead,
            Key = key,
            First = first,
            Last = last,
            From = from,
            Until = from is null ? null : new LocalTime(17, 0),
            TimeZone = "America/Detroit",
            Title = "Hinge cut, größere; \"Nordhang\"",
            Place = "Harrow Brook, Hemlock Knoll, a place with a name that is long enough to be folded over several lines",
            IsCancelled = isCancelled,
            Sequence = 4,
            ChangedAt = Scenario.Now,
        };
    }
}
