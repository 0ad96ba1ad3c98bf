using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using NodaTime;

namespace WorkWindows.Service.Notices;

/// <summary>The iCalendar text (RFC 5545, RFC 5546) that goes with a notice.</summary>
public static class CalendarFile
{
    private const string Product = "-//WorkWindows//Notices//EN";
    private static readonly LocalDate Epoch = new(2020, 1, 1);

    /// <param name="draft">The days.</param>
    /// <param name="night">The night it is written in: later nights supersede earlier ones.</param>
    /// <param name="now">The time of writing.</param>
    /// <param name="sender">The mail address that notices come from.</param>
    /// <param name="domain">The domain that makes identifiers unique.</param>
    public static string Of(CalendarDraft draft, LocalDate night, Instant now, string sender, string domain)
    {
        var calendar = new Calendar { ProductId = Product, Method = draft.IsCancelled ? "CANCEL" : "PUBLISH" };
        // A cancellation comes after what was published in the same night, and before what the next one publishes.
        var sequence = (2 * NodaTime.Period.DaysBetween(Epoch, night)) + (draft.IsCancelled ? 1 : 0);
        foreach (var entry in draft.Entries)
        {
            calendar.Events.Add(new CalendarEvent
            {
                Uid = $"{entry.TaskId:N}-{entry.First:uuuuMMdd}@{domain}",
                Sequence = sequence,
                DtStamp = new CalDateTime(now.ToDateTimeUtc()),
                Organizer = new Organizer($"mailto:{sender}"),
                Start = Day(entry.First),
                // The end of a whole-day event is the day after.
                End = Day(entry.Last.PlusDays(1)),
                Summary = draft.IsCancelled ? $"Stopped: {entry.Title}" : entry.Title,
                Location = entry.Place,
                Status = draft.IsCancelled ? EventStatus.Cancelled : EventStatus.Confirmed,
                Transparency = TransparencyType.Transparent,
            });
        }
        return new CalendarSerializer().SerializeToString(calendar)!;
    }

    /// <summary>What a calendar is to be used for: PUBLISH or CANCEL.</summary>
    public static string MethodOf(string text) => Calendar.Load(text)!.Method!;

    private static CalDateTime Day(LocalDate day) => new(day.Year, day.Month, day.Day);
}
