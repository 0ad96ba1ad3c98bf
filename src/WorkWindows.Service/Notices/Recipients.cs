using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>The people of an organization and how each wants to be told.</summary>
internal static class Recipients
{
    /// <param name="db">Where they are stored.</param>
    /// <param name="zone">The organization's zone, for quiet hours of people who have none.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public static async Task<Dictionary<Guid, Recipient>> ReadAsync(
        WorkWindowsDb db, DateTimeZone zone, CancellationToken cancellation)
    {
        var choices = (await db.NoticeChoices.AsNoTracking().ToListAsync(cancellation))
            .ToLookup(choice => choice.PersonId);
        var settings = await db.NoticeSettings.AsNoTracking().ToDictionaryAsync(row => row.PersonId, cancellation);
        return await db.People.AsNoTracking().OrderBy(person => person.Id).ToDictionaryAsync(
            person => person.Id,
            person => new Recipient(person.Id, person.DisplayName, person.Email)
            {
                Wishes = Wishes.Of(settings.GetValueOrDefault(person.Id), choices[person.Id], zone),
                IsConsultant = person.Role == Role.Consultant,
            },
            cancellation);
    }
}
