using System.Buffers.Text;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using NodaTime;
using WorkWindows.Engine.Practices;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Notices.Calendars;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Crews;

/// <summary>The published work of a crew, as a calendar program fetches it. The address itself is the secret.</summary>
public sealed class CrewCalendar(
    WorkWindowsDb db, IOptions<SiteOptions> site, IOptions<MailOptions> mail, IClock clock)
{
    private const int SecretBytes = 32;

    /// <summary>Days before today that a calendar still shows.</summary>
    private const int DaysBack = 30;

    /// <summary>Gives a crew a new address; an older one no longer works.</summary>
    /// <returns>The address; null where there is no such crew.</returns>
    public async Task<string?> NewAddressAsync(Guid crewId, HttpRequest request, CancellationToken cancellation)
    {
        if (await db.Crews.SingleOrDefaultAsync(row => row.Id == crewId, cancellation) is not { } crew)
            return null;
        crew.CalendarKey = Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(SecretBytes));
        await db.SaveChangesAsync(cancellation);
        var root = site.Value.Address?.TrimEnd('/') ?? $"{request.Scheme}://{request.Host}";
        return $"{root}/calendars/{crew.OrganizationId}/crew.ics?key={crew.CalendarKey}";
    }

    internal static void Map(IEndpointRouteBuilder app) => app.MapGet("/calendars/{organization:guid}/crew.ics", ReadAsync)
        .AllowAnonymous().WithTags("Crews").WithSummary("A crew's calendar (RFC 5545), for calendar programs.")
        .Produces<string>(contentType: "text/calendar");

    private static Task<Results<FileContentHttpResult, NotFound>> ReadAsync(
        Guid organization, string? key, IServiceScopeFactory scopes, CancellationToken cancellation) =>
        CalendarFeed.AnswerAsync(organization, key, scopes, (services, secret) =>
            services.GetRequiredService<CrewCalendar>().TextAsync(secret, cancellation));

    private async Task<string?> TextAsync(string key, CancellationToken cancellation)
    {
        var crew = await db.Crews.AsNoTracking().SingleOrDefaultAsync(row => row.CalendarKey == key, cancellation);
        if (crew is null)
            return null;
        var hours = await db.Organizations.Select(row => new { row.ShiftStart, row.ShiftEnd }).SingleAsync(cancellation);
        var oldest = clock.GetCurrentInstant().InUtc().Date.PlusDays(-DaysBack);
        var rows = await db.Bookings.AsNoTracking().Where(booking => booking.CrewId == crew.Id)
            .OrderBy(booking => booking.Day).ThenBy(booking => booking.Place)
            .Select(booking => new
            {
                booking.Id,
                booking.TaskId,
                booking.Day,
                booking.Task.PracticeId,
                Parcel = booking.Task.Parcel.Name,
                Property = booking.Task.Parcel.Property.Name,
                booking.Task.Parcel.Property.TimeZone,
            }).ToListAsync(cancellation);
        // The days of a task are numbered, so that an entry keeps its identifier when its day moves.
        var days = rows.GroupBy(row => row.TaskId).SelectMany(task => task.Select((row, number) =>
        {
            var changedAt = WrittenAt(row.Id);
            return new CalendarDay
            {
                PersonId = crew.LeadId,
                Key = $"{row.TaskId:N}-{crew.Id:N}-{number}",
                First = row.Day,
                Last = row.Day,
                From = hours.ShiftStart,
                Until = hours.ShiftEnd,
                TimeZone = row.TimeZone,
                Title = PracticeCatalogue.Find(row.PracticeId)?.Name ?? row.PracticeId,
                Place = $"{row.Property}, {row.Parcel}",
                IsCancelled = false,
                Sequence = (int)(changedAt - Epoch).TotalSeconds,
                ChangedAt = changedAt,
            };
        })).Where(day => day.First >= oldest).OrderBy(day => day.First).ThenBy(day => day.Key, StringComparer.Ordinal).ToList();
        return CalendarFile.OfFeed(days, mail.Value, $"WorkWindows, {crew.Name}");
    }

    private static Instant Epoch { get; } = Instant.FromUtc(2026, 1, 1, 0, 0);

    /// <summary>
    /// When a booking was written, to the second: bookings are never changed but written anew, and their identifiers
    /// (RFC 9562, version 7) begin with the milliseconds of that moment.
    /// </summary>
    private static Instant WrittenAt(Guid id)
    {
        var bytes = id.ToByteArray(bigEndian: true);
        var milliseconds = bytes.Take(6).Aggregate(0L, (sum, one) => (sum << 8) | one);
        return Instant.FromUnixTimeSeconds(milliseconds / 1000);
    }
}
