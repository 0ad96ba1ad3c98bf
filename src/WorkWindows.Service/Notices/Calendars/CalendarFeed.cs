using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using Microsoft.Net.Http.Headers;
using NodaTime;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices.Calendars;

/// <summary>
/// The days that a person was told of, as a calendar program fetches them. The address itself is the secret.
/// </summary>
public sealed class CalendarFeed(IOptions<SiteOptions> site, IOptions<MailOptions> mail, IClock clock)
{
    /// <returns>The address, with the secret where logs of requests leave it out.</returns>
    public string AddressOf(Guid organization, string key, HttpRequest request)
    {
        var root = site.Value.Address?.TrimEnd('/') ?? $"{request.Scheme}://{request.Host}";
        return $"{root}/calendars/{organization}.ics?key={key}";
    }

    internal static void Map(IEndpointRouteBuilder app) => app.MapGet("/calendars/{organization:guid}.ics", ReadAsync)
        .AllowAnonymous().WithTags("Notices").WithSummary("A person's calendar (RFC 5545), for calendar programs.")
        .Produces<string>(contentType: "text/calendar");

    private static Task<Results<FileContentHttpResult, NotFound>> ReadAsync(
        Guid organization, string? key, CalendarFeed feed, IServiceScopeFactory scopes, CancellationToken cancellation) =>
        AnswerAsync(organization, key, scopes, (services, secret) =>
            feed.TextAsync(services.GetRequiredService<WorkWindowsDb>(), secret, cancellation));

    /// <param name="organization">Whose calendar it is.</param>
    /// <param name="key">The secret of its address.</param>
    /// <param name="scopes">Makes a scope of its own: whoever has signed in to the browser may be of another organization.</param>
    /// <param name="textOf">The calendar of a secret, or null.</param>
    internal static async Task<Results<FileContentHttpResult, NotFound>> AnswerAsync(
        Guid organization, string? key, IServiceScopeFactory scopes, Func<IServiceProvider, string, Task<string?>> textOf)
    {
        if (string.IsNullOrEmpty(key))
            return TypedResults.NotFound();
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(organization);
        return await textOf(scope.ServiceProvider, key) is { } text ? Answer(text) : TypedResults.NotFound();
    }

    private static FileContentHttpResult Answer(string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        var tag = $"\"{Convert.ToHexStringLower(SHA256.HashData(bytes))}\"";
        return TypedResults.File(bytes, "text/calendar; charset=utf-8", entityTag: new EntityTagHeaderValue(tag));
    }

    private async Task<string?> TextAsync(WorkWindowsDb db, string key, CancellationToken cancellation)
    {
        var owner = await db.NoticeSettings.Where(row => row.CalendarKey == key)
            .Join(
                db.People, row => row.PersonId, person => person.Id,
                (row, person) => new { person.Id, person.DisplayName })
            .SingleOrDefaultAsync(cancellation);
        if (owner is null)
            return null;
        var oldest = clock.GetCurrentInstant().InUtc().Date.PlusDays(-CalendarLedger.DaysBack);
        var days = await db.CalendarDays.AsNoTracking()
            .Where(day => day.PersonId == owner.Id && day.Last >= oldest)
            .OrderBy(day => day.First).ThenBy(day => day.Key).ToListAsync(cancellation);
        return CalendarFile.OfFeed(days, mail.Value, $"WorkWindows, {owner.DisplayName}");
    }
}
