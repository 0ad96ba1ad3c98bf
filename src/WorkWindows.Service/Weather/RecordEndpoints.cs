using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Weather;

/// <summary>What the weather is known from: readings that are not used, and the record of a parcel.</summary>
internal static class RecordEndpoints
{
    private static readonly DaySpan LongestRecord = DaySpan.Between(new(1700, 1, 1), new(2200, 12, 31));

    public static void MapRecords(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/weather/stations/{ghcnId}/rejected", RejectedAsync).WithTags("Weather")
            .RequireAuthorization(Access.Work)
            .WithSummary("Lists the readings of a station that are not used, each with the reason.");
        app.MapGet("/api/parcels/{id:guid}/record", RecordAsync).WithTags("Weather").RequireAuthorization()
            .WithSummary("Shows the weather of a parcel day by day, and which stations each value comes from.");
    }

    private static async Task<Results<Ok<StationFindings.FindingsView>, NotFound, ValidationProblem>> RejectedAsync(
        string ghcnId, string? from, string? to, StationFindings findings, CancellationToken cancellation)
    {
        var faults = new FieldFaults();
        var first = from is null ? LongestRecord.First : AskedDays.Date("from", from, faults);
        var last = to is null ? LongestRecord.Last : AskedDays.Date("to", to, faults);
        if (first > last)
            faults.Add("to", to, $"a day that is not before {from}");
        if (faults.Any)
            return faults.ToProblem();
        return await findings.OfAsync(ghcnId, DaySpan.Between(first!.Value, last!.Value), cancellation) is { } view
            ? TypedResults.Ok(view)
            : TypedResults.NotFound();
    }

    private static async Task<Results<Ok<RecordView>, NotFound, ValidationProblem>> RecordAsync(
        Guid id, string? from, string? to, VisibleProperties visible, ParcelSources sources, ParcelRecords records,
        IClock clock, CancellationToken cancellation)
    {
        var zone = await visible.All.Where(property => property.Parcels.Any(parcel => parcel.Id == id))
            .Select(property => property.TimeZone).SingleOrDefaultAsync(cancellation);
        if (zone is null)
            return TypedResults.NotFound();
        var now = clock.GetCurrentInstant();
        var today = now.InZone(DateTimeZoneProviders.Tzdb[zone]).Date;
        var faults = new FieldFaults();
        // Without dates the year up to today: there is nothing to read of days to come.
        if (!AskedDays.TryRead(from ?? $"{today.PlusYears(-1).PlusDays(1):R}", to, today, faults, out var days))
            return faults.ToProblem();
        var source = (await sources.OfAsync([id], cancellation))[id];
        return await records.OfAsync(source, now, cancellation) is { } record
            ? TypedResults.Ok(RecordView.Of(
                record, await records.ObservedAsync(source, now, cancellation), source, days))
            : TypedResults.Ok(new RecordView([], [], []));
    }
}
