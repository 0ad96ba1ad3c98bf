using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using NodaTime;

namespace WorkWindows.Service.Notices.Calendars;

/// <summary>The iCalendar texts (RFC 5545, RFC 5546) that go with a notice or make up a feed.</summary>
public static class CalendarFile
{
    private const string Product = "-//WorkWindows//Notices//EN";

    /// <summary>What goes with one notice: all of the days are told, or all are taken back.</summary>
    /// <param name="days">At least one.</param>
    /// <param name="mail">The sender, whose domain makes identifiers unique.</param>
    public static string OfNotice(IReadOnlyList<CalendarDay> days, MailOptions mail)
    {
        var calendar = new Calendar { ProductId = Product, Method = days[0].IsCancelled ? "CANCEL" : "PUBLISH" };
        return Text(calendar, days, mail);
    }

    /// <summary>What a person's calendar program fetches: days that were taken back stand in it as cancelled.</summary>
    /// <param name="days">In any number.</param>
    /// <param name="mail">The sender, whose domain makes identifiers unique.</param>
    /// <param name="name">What calendar programs call it.</param>
    public static string OfFeed(IReadOnlyList<CalendarDay> days, MailOptions mail, string name)
    {
        var calendar = new Calendar { ProductId = Product, Method = "PUBLISH" };
        // RFC 7986, 5.1 and 5.7; the second forms are those that programs knew before it.
        calendar.AddProperty("NAME", name);
        calendar.AddProperty("X-WR-CALNAME", name);
        calendar.AddProperty(new CalendarProperty("REFRESH-INTERVAL", "PT1H")
        {
            Parameters = { new CalendarParameter("VALUE", "DURATION") },
        });
        calendar.AddProperty("X-PUBLISHED-TTL", "PT1H");
        return Text(calendar, days, mail);
    }

    /// <summary>What a calendar is to be used for: PUBLISH or CANCEL.</summary>
    public static string MethodOf(string text) => Calendar.Load(text)!.Method!;

    private static string Text(Calendar calendar, IReadOnlyList<CalendarDay> days, MailOptions mail)
    {
        foreach (var zone in days.Where(day => day.From is not null).GroupBy(day => day.TimeZone))
        {
            var first = zone.Min(day => day.First);
            calendar.AddTimeZone(VTimeZone.FromDateTimeZone(
                zone.Key, new(first.Year, 1, 1, 0, 0, 0, DateTimeKind.Unspecified), includeHistoricalData: false));
        }
        foreach (var day in days)
            calendar.Events.Add(Event(day, mail));
        return new CalendarSerializer().SerializeToString(calendar)!;
    }

    private static CalendarEvent Event(CalendarDay day, MailOptions mail) => new()
    {
        Uid = $"{day.Key}@{mail.MessageDomain}",
        Sequence = day.Sequence,
        DtStamp = new CalDateTime(day.ChangedAt.ToDateTimeUtc()),
        Organizer = new Organizer($"mailto:{mail.SenderAddress}"),
        Start = day.From is { } from ? Moment(day.First + from, day.TimeZone) : Day(day.First),
        // The end of a whole-day event is the day after.
        End = day.Until is { } until ? Moment(day.Last + until, day.TimeZone) : Day(day.Last.PlusDays(1)),
        Summary = day.IsCancelled ? $"Stopped: {day.Title}" : day.Title,
        Location = day.Place,
        Status = day.IsCancelled ? EventStatus.Cancelled : EventStatus.Confirmed,
        Transparency = day.From is null ? TransparencyType.Transparent : TransparencyType.Opaque,
    };

    private static CalDateTime Day(LocalDate day) => new(day.Year, day.Month, day.Day);

    private static CalDateTime Moment(LocalDateTime at, string zone) =>
        new(at.Year, at.Month, at.Day, at.Hour, at.Minute, at.Second, zone);
}
