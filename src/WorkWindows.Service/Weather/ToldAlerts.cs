using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Alerts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>What the weather service told of alerts at stations.</summary>
internal sealed class ToldAlerts
{
    /// <summary>Today and six more: watches and outlooks do not reach further.</summary>
    private const int DaysOfAlerts = 7;

    private readonly Instant asOf;
    private readonly ILookup<Guid, Told> newest;
    private readonly ILookup<(Guid, string), Told> past;

    private ToldAlerts(Instant asOf, IReadOnlyList<Told> told)
    {
        this.asOf = asOf;
        newest = told.Where(one => one.FetchedAt is not null).ToLookup(one => one.StationId);
        past = told.Where(one => one.FetchedAt is null).ToLookup(one => (one.StationId, one.ZoneId!));
    }

    /// <param name="db">The database.</param>
    /// <param name="asked">Stations, and the zones whose days are meant.</param>
    /// <param name="asOf">Reports that were fetched later do not count.</param>
    /// <param name="first">The first day that is of interest.</param>
    /// <param name="cancellation">Ends the query.</param>
    public static async Task<ToldAlerts> ReadAsync(
        WorkWindowsDb db, IEnumerable<(Guid? Station, DateTimeZone Zone)> asked, Instant asOf, LocalDate first,
        CancellationToken cancellation)
    {
        var places = asked.Where(one => one.Station is not null).Distinct().ToList();
        if (places.Count == 0)
            return new(asOf, []);
        var stations = places.Select(one => one.Station!.Value).ToArray();
        var zones = places.Select(one => one.Zone.Id).ToArray();
        var begins = places.Select(one => one.Zone.AtStartOfDay(first).ToInstant()).ToArray();
        var ends = places.Select(one => one.Zone.AtStartOfDay(asOf.InZone(one.Zone).Date).ToInstant()).ToArray();
        // Reports come every hour and mostly repeat the one before: what they say is brought together where it lies.
        return new(asOf, await db.Database.SqlQuery<Told>($"""
            with asked as materialized (
              select * from unnest({stations}, {zones}, {begins}, {ends}) as one(station_id, zone_id, begins_at, ends_at))
            select newest.station_id, null as zone_id, null::date as day, newest.fetched_at, alert.kind, alert.event, alert.starts_at, alert.ends_at
            from (select distinct station_id from asked) one
            cross join lateral (
              select id, station_id, fetched_at from weather_alert_reports report
              where report.station_id = one.station_id and fetched_at <= {asOf}
              order by fetched_at desc limit 1) newest
            left join weather_alerts alert on alert.report_id = newest.id
            union all
            select distinct asked.station_id, asked.zone_id, (report.fetched_at at time zone asked.zone_id)::date, null::timestamptz,
              alert.kind, alert.event, alert.starts_at, alert.ends_at
            from asked
            join weather_alert_reports report on report.station_id = asked.station_id and report.fetched_at <= {asOf}
              and report.fetched_at >= asked.begins_at and report.fetched_at < asked.ends_at
            join weather_alerts alert on alert.report_id = report.id
            """).ToListAsync(cancellation));
    }

    /// <summary>Today and the days after it, of which nothing is known without a recent report.</summary>
    public static DaySpan NotKnown(Instant asOf, DateTimeZone zone) => new(asOf.InZone(zone).Date, DaysOfAlerts);

    /// <summary>The alerts of a station by the days of a zone.</summary>
    public AlertReport Of(Guid station, DateTimeZone zone)
    {
        var today = asOf.InZone(zone).Date;
        var isRecent = newest[station].Any(one => asOf - one.FetchedAt <= WeatherRecords.LongestAlertAge);
        var coming = newest[station].Where(one => one.Kind is not null).Select(one => one.Alert(zone))
            .Where(alert => alert.Last >= today)
            .Select(alert => alert with { First = LocalDate.Max(alert.First, today) });
        var over = past[(station, zone.Id)]
            .Select(one => (Day: one.Day!.Value, Alert: one.Alert(zone)))
            .Where(said => said.Alert.First <= said.Day && said.Day <= said.Alert.Last)
            .Select(said => said.Alert with { First = said.Day, Last = said.Day });
        return new([.. over.Distinct().Concat(coming)], isRecent ? null : NotKnown(asOf, zone));
    }

    /// <summary>An alert of the newest report of a station, or one that was told on a day that is over.</summary>
    /// <param name="StationId">The station.</param>
    /// <param name="ZoneId">The zone of the day; null for the newest report.</param>
    /// <param name="Day">The day that is over; null for the newest report.</param>
    /// <param name="FetchedAt">When the newest report came; null for a day that is over.</param>
    /// <param name="Kind">Null where the newest report is without alerts, as all that follows.</param>
    /// <param name="Event">The service's own name for it.</param>
    /// <param name="StartsAt">When it begins.</param>
    /// <param name="EndsAt">When it ends.</param>
    internal sealed record Told(
        Guid StationId, string? ZoneId, LocalDate? Day, Instant? FetchedAt, string? Kind, string? Event, Instant? StartsAt,
        Instant? EndsAt)
    {
        public WeatherAlert Alert(DateTimeZone zone) =>
            new ActiveAlert(Enum.Parse<AlertKind>(Kind!), Event!, StartsAt!.Value, EndsAt!.Value).InZone(zone);
    }
}
