using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Weather;

/// <summary>What is known of the weather at a station, or was known on a past moment.</summary>
internal static class KnownWeatherEndpoints
{
    /// <summary>The days up to the last reading that are shown when no others are asked for.</summary>
    private const int DaysShown = 366;

    /// <param name="GhcnId">The station.</param>
    /// <param name="AsOf">The moment that this was known on.</param>
    /// <param name="From">The first day.</param>
    /// <param name="To">The last day, included.</param>
    /// <param name="Readings">In the order of day and element; a day without a value is absent.</param>
    public sealed record ReadingsView(
        string GhcnId, Instant AsOf, LocalDate From, LocalDate To, IReadOnlyList<ReadingView> Readings);

    /// <param name="Date">The local day that the station books it to.</param>
    /// <param name="Element">What it is, with its unit.</param>
    /// <param name="Value">In that unit.</param>
    /// <param name="QualityFlag">Why the source rejects it; null for a value that may be used.</param>
    /// <param name="KnownSince">When it became known; null where that was before it was recorded.</param>
    public sealed record ReadingView(
        LocalDate Date, DailyElement Element, double Value, char? QualityFlag, Instant? KnownSince);

    /// <param name="GhcnId">The station.</param>
    /// <param name="AsOf">The moment that this was known on.</param>
    /// <param name="Values">The newest of each day and element, in their order, of the ten days before.</param>
    public sealed record ForecastView(string GhcnId, Instant AsOf, IReadOnlyList<ForecastValueView> Values);

    /// <param name="Date">The local day it is for.</param>
    /// <param name="Element">What it is, with its unit.</param>
    /// <param name="Value">In that unit.</param>
    /// <param name="IssuedAt">When the service made the forecast.</param>
    /// <param name="KnownSince">When it was fetched.</param>
    public sealed record ForecastValueView(
        LocalDate Date, DailyElement Element, double Value, Instant IssuedAt, Instant KnownSince);

    /// <param name="GhcnId">The station.</param>
    /// <param name="AsOf">The moment that this was known on.</param>
    /// <param name="KnownSince">When the weather service answered; null when it had never been asked.</param>
    /// <param name="Alerts">The alerts of that answer.</param>
    public sealed record AlertsView(
        string GhcnId, Instant AsOf, Instant? KnownSince, IReadOnlyList<AlertView> Alerts);

    /// <summary>An alert in the words of the service.</summary>
    public sealed record AlertView(AlertKind Kind, string Event, Instant StartsAt, Instant EndsAt);

    public static void MapKnownWeather(this IEndpointRouteBuilder stations)
    {
        stations.MapGet("/{ghcnId}/readings", ReadingsAsync)
            .WithSummary("Shows readings as they are known, or were on a past moment; at most 400 days.");
        stations.MapGet("/{ghcnId}/forecast", ForecastAsync)
            .WithSummary("Shows what is foretold, or was on a past moment.");
        stations.MapGet("/{ghcnId}/alerts", AlertsAsync)
            .WithSummary("Shows the alerts that are known, or were on a past moment.");
    }

    private static async Task<Results<Ok<ReadingsView>, NotFound, ValidationProblem>> ReadingsAsync(
        string ghcnId, string? asOf, string? from, string? to, WorkWindowsDb db, IClock clock,
        CancellationToken cancellation)
    {
        if (await FindAsync(db, ghcnId, cancellation) is not { } station)
            return TypedResults.NotFound();
        var faults = new FieldFaults();
        var moment = AskedMoment.Read("asOf", asOf, clock.GetCurrentInstant(), faults);
        var last = await db.StationReadings.Where(reading => reading.StationId == station.Id)
            .MaxAsync(reading => (LocalDate?)reading.Date, cancellation) ?? moment.InUtc().Date;
        if (from is null && to is null)
            to = $"{last:R}";
        if (from is null && AskedDays.Date("to", to!, new()) is { } end)
            from = $"{end.PlusDays(1 - DaysShown):R}";
        if (!AskedDays.TryRead(from, to, last, faults, out var days))
            return faults.ToProblem();
        var known = await KnownReadings.Of(db, station, moment)
            .Where(reading => reading.Date >= days.First && reading.Date <= days.Last).ToListAsync(cancellation);
        return TypedResults.Ok(new ReadingsView(ghcnId, moment, days.First, days.Last, known.ConvertAll(reading =>
            new ReadingView(
                reading.Date, reading.Element, reading.Value, reading.QualityFlag,
                reading.KnownSince == Instant.MinValue ? null : reading.KnownSince))));
    }

    private static async Task<Results<Ok<ForecastView>, NotFound, ValidationProblem>> ForecastAsync(
        string ghcnId, string? asOf, WorkWindowsDb db, IClock clock, CancellationToken cancellation)
    {
        if (await FindAsync(db, ghcnId, cancellation) is not { } station)
            return TypedResults.NotFound();
        var faults = new FieldFaults();
        var moment = AskedMoment.Read("asOf", asOf, clock.GetCurrentInstant(), faults);
        if (faults.Any)
            return faults.ToProblem();
        var forecasts = await KnownForecasts.Of(db, [station.Id], moment).ToListAsync(cancellation);
        return TypedResults.Ok(new ForecastView(ghcnId, moment,
        [
            .. forecasts.SelectMany(forecast => forecast.Readings.Select(reading => new ForecastValueView(
                    reading.Date, reading.Element, reading.Value, forecast.IssuedAt, forecast.FetchedAt)))
                .GroupBy(value => (value.Date, value.Element)).Select(values => values.Last())
                .OrderBy(value => value.Date).ThenBy(value => value.Element),
        ]));
    }

    private static async Task<Results<Ok<AlertsView>, NotFound, ValidationProblem>> AlertsAsync(
        string ghcnId, string? asOf, WorkWindowsDb db, IClock clock, CancellationToken cancellation)
    {
        if (await FindAsync(db, ghcnId, cancellation) is not { } station)
            return TypedResults.NotFound();
        var faults = new FieldFaults();
        var moment = AskedMoment.Read("asOf", asOf, clock.GetCurrentInstant(), faults);
        if (faults.Any)
            return faults.ToProblem();
        var newest = await KnownForecasts.Alerts(db, station.Id, moment).Include(report => report.Alerts)
            .OrderByDescending(report => report.FetchedAt).FirstOrDefaultAsync(cancellation);
        return TypedResults.Ok(new AlertsView(ghcnId, moment, newest?.FetchedAt,
        [
            .. (newest?.Alerts ?? []).OrderBy(alert => alert.StartsAt).ThenBy(
                alert => alert.Event, StringComparer.Ordinal)
                .Select(alert => new AlertView(alert.Kind, alert.Event, alert.StartsAt, alert.EndsAt)),
        ]));
    }

    private static Task<Station?> FindAsync(WorkWindowsDb db, string ghcnId, CancellationToken cancellation) =>
        db.Stations.AsNoTracking().SingleOrDefaultAsync(station => station.GhcnId == ghcnId, cancellation);
}
