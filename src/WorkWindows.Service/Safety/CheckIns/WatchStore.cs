using System.Globalization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Practices;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>Reads watches, alone or for a change.</summary>
public sealed class WatchStore(WorkWindowsDb db)
{
    /// <summary>Watches with all that belongs to them, untracked.</summary>
    public IQueryable<CrewWatch> All => db.CrewWatches.AsNoTracking().AsSplitQuery()
        .Include(watch => watch.Contacts.OrderBy(contact => contact.Place))
        .Include(watch => watch.CheckIns.OrderBy(checkIn => checkIn.Number))
        .Include(watch => watch.Missed.OrderBy(missed => missed.RaisedAt))
        .ThenInclude(missed => missed.Calls.OrderBy(call => call.Number));

    /// <summary>Whoever else wants to change the watch waits until the open transaction has ended.</summary>
    /// <returns>The watch with all that belongs to it; null when there is none.</returns>
    public async Task<CrewWatch?> LockAsync(Guid id, CancellationToken cancellation)
    {
        var rows = await db.CrewWatches.FromSql($"select * from crew_watches where id = {id} for update")
            .ToListAsync(cancellation);
        if (rows is not [var watch])
            return null;
        await db.Entry(watch).Collection(row => row.Contacts).LoadAsync(cancellation);
        await db.Entry(watch).Collection(row => row.CheckIns).LoadAsync(cancellation);
        await db.Entry(watch).Collection(row => row.Missed).Query().Include(missed => missed.Calls)
            .LoadAsync(cancellation);
        return watch;
    }

    /// <returns>What a mail or a page says of the place and the people of a watch.</returns>
    internal async Task<WatchScene> SceneAsync(CrewWatch watch, CancellationToken cancellation)
    {
        var task = await db.PlannedTasks.Where(row => row.Id == watch.TaskId).Select(row => new
        {
            row.PracticeId,
            Parcel = row.Parcel.Name,
            Property = row.Parcel.Property.Name,
            row.Parcel.Property.TimeZone,
            Place = row.Parcel.Property,
            row.Parcel.Latitude,
            row.Parcel.Longitude,
            row.CrewLeadId,
            BookedLead = db.Bookings.Where(booking => booking.TaskId == row.Id && booking.Day == watch.Day)
                .Select(booking => (Guid?)booking.Crew.LeadId).SingleOrDefault(),
        }).SingleAsync(cancellation);
        var organization = await db.Organizations.AsNoTracking().SingleAsync(cancellation);
        var crew = new[] { watch.StartedById, task.BookedLead ?? task.CrewLeadId };
        var phones = await db.People.Where(person => crew.Contains(person.Id) && person.PhoneNumber != null)
            .OrderBy(person => person.DisplayName)
            .Select(person => $"{person.DisplayName}, {person.PhoneNumber}").ToListAsync(cancellation);
        var practice = PracticeCatalogue.Find(task.PracticeId)?.Name ?? task.PracticeId;
        return new(
            organization.Id, $"{practice}, {task.Property}, {task.Parcel}",
            DateTimeZoneProviders.Tzdb[task.TimeZone], task.Latitude, task.Longitude, phones,
            new(organization.Name, organization.PostalAddress))
        {
            WayThere = WatchScene.WayTo(task.Place),
        };
    }
}

/// <summary>Where a watched crew works, and how it is reached.</summary>
/// <param name="OrganizationId">Whose it is.</param>
/// <param name="Title">The work and its place in a line.</param>
/// <param name="Zone">The property's zone, in which times are told.</param>
/// <param name="LatitudeDeg">Of the parcel.</param>
/// <param name="LongitudeDeg">Of the parcel, east positive.</param>
/// <param name="Phones">
/// Names and numbers of who began the watch and who leads the crew, as far as they are stored.
/// </param>
/// <param name="Sender">Who speaks.</param>
internal sealed record WatchScene(
    Guid OrganizationId, string Title, DateTimeZone Zone, double LatitudeDeg, double LongitudeDeg,
    IReadOnlyList<string> Phones, Sender Sender)
{
    /// <summary>
    /// What has been entered of the place that helps to find it and to call help to it, a line each; none when nothing
    /// has.
    /// </summary>
    public IReadOnlyList<string> WayThere { get; init; } = [];

    /// <summary>Degrees north and east of the parcel's point, to about a metre.</summary>
    public string Position => string.Create(
        CultureInfo.InvariantCulture, $"{LatitudeDeg:0.00000}, {LongitudeDeg:0.00000}");

    internal static IReadOnlyList<string> WayTo(Property property) =>
    [
        .. new[]
        {
            ("Nearest address", property.NearestAddress),
            ("Way in", property.AccessNotes),
            ("Sheriff", property.Sheriff),
            ("Hospital", property.Hospital),
        }.Where(line => line.Item2 is not null).Select(line => $"{line.Item1}: {line.Item2}"),
    ];
}
