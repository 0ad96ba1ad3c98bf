using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

internal static class StationEndpoints
{
    /// <summary>Twice the largest station file that NOAA publishes, unpacked.</summary>
    private const int LimitMegabytes = 64;

    /// <summary>A station as the API shows it.</summary>
    /// <param name="GhcnId">Its GHCN-Daily id.</param>
    /// <param name="Name">Its name.</param>
    /// <param name="Latitude">Degrees north.</param>
    /// <param name="Longitude">Degrees east.</param>
    /// <param name="ElevationM">Metres above sea level, or null.</param>
    /// <param name="FirstDay">The first day with a reading; null without any.</param>
    /// <param name="LastDay">The last day with temperatures, or with any reading of a station that reads none.</param>
    /// <param name="TemperatureCoverage">Share of the record's last ten years with minimum and maximum, 0 to 1.</param>
    /// <param name="WindCoverage">Share of the record's last five years with wind and gust, 0 to 1.</param>
    public sealed record StationView(
        string GhcnId, string Name, double Latitude, double Longitude, double? ElevationM, LocalDate? FirstDay,
        LocalDate? LastDay, double TemperatureCoverage, double WindCoverage);

    public static void MapStations(this IEndpointRouteBuilder app)
    {
        var stations = app.MapGroup("/api/weather/stations").WithTags("Weather").RequireAuthorization(Access.Work);
        stations.MapGet("", ListAsync).WithSummary("Lists the stations and how complete their records are.");
        stations.MapPost("/{ghcnId}", PutAsync).RequireAuthorization(Access.Plan)
            .WithSummary("Adds a station, or changes what is known of it.");
        stations.MapPost("/{ghcnId}/readings", ImportAsync).RequireAuthorization(Access.Plan)
            .WithSummary("Stores a file of the station's record: GHCN-Daily, NOAA's tables or plain CSV; gzip or not.")
            .Accepts<IFormFile>("text/plain", ["text/csv", "application/gzip", .. HandedInFile.AnyType]);
        stations.MapKnownWeather();
    }

    private static async Task<List<StationView>> ListAsync(WorkWindowsDb db, CancellationToken cancellation) =>
        [.. (await db.Stations.AsNoTracking().OrderBy(station => station.GhcnId).ToListAsync(cancellation)).Select(
            View)];

    private static async Task<Results<Ok<StationView>, NotFound, ValidationProblem, ProblemHttpResult>> PutAsync(
        string ghcnId, StationForm form, StationHandler stations, CancellationToken cancellation) =>
        (await stations.PutAsync(ghcnId, form, cancellation)).Answer(View);

    private static async Task<Results<Ok<ImportCounts>, NotFound, ProblemHttpResult>> ImportAsync(
        string ghcnId, string? units, HttpRequest request, StationImportHandler imports,
        CancellationToken cancellation)
    {
        var (content, problem) = await HandedInFile.ReadAsync(request, LimitMegabytes, cancellation);
        if (content is null)
            return problem!;
        return await imports.ImportAsync(ghcnId, content, units, cancellation) switch
        {
            null => TypedResults.NotFound(),
            { Stored: { } counts } => TypedResults.Ok(counts),
            { Faults: var faults } => ImportProblems.Refusal(faults),
        };
    }

    private static StationView View(Station station) => new(
        station.GhcnId, station.Name, station.Latitude, station.Longitude, station.ElevationM, station.FirstDay,
        station.LastDay, station.TemperatureCoverage, station.WindCoverage);
}
