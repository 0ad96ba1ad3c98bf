using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Notices;

/// <summary>Days as people say them in a mail: with their weekday, without the year.</summary>
internal static class MailDays
{
    private static readonly LocalDatePattern Full = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM");
    private static readonly LocalDatePattern WithoutMonth = LocalDatePattern.CreateWithInvariantCulture("ddd d");

    private static readonly ZonedDateTimePattern Moment =
        ZonedDateTimePattern.CreateWithInvariantCulture("ddd d MMM uuuu, HH:mm", DateTimeZoneProviders.Tzdb);

    public static string Of(LocalDate day) => Full.Format(day);

    public static string Of(Window run) =>
        run.First == run.Last ? Of(run.First)
        : run.First.Month == run.Last.Month ? $"{WithoutMonth.Format(run.First)} – {Of(run.Last)}"
        : $"{Of(run.First)} – {Of(run.Last)}";

    public static string Of(IEnumerable<Window> runs) => string.Join(", ", runs.Select(Of));

    public static string Of(Instant moment, DateTimeZone zone) => $"{Moment.Format(moment.InZone(zone))} ({zone.Id})";
}
