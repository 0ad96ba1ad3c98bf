using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Safety.CheckIns;
using WorkWindows.Service.Tests.Notices;
using WorkWindows.Service.Tests.Storage;

namespace WorkWindows.Service.Tests.Safety.CheckIns;

/// <summary>
/// A crew at a hinge cut, watched from nine in the morning in Detroit; its lead and a neighbour are called.
/// </summary>
internal sealed record GivenWatch(GivenLand Land, Guid Id)
{
    public static readonly Signer Tom = new(null, "Tom Vance");

    /// <summary>Nine in the morning in Detroit.</summary>
    public static readonly Instant Start = Instant.FromUtc(2026, 2, 2, 14, 0);

    public static async Task<GivenWatch> StoreAsync(TestDatabase database, string neighbourName = "Nell Ashby")
    {
        var land = await GivenLand.StoreAsync(database);
        await using var db = land.Open();
        var task = await db.PlannedTasks.SingleAsync();
        var watch = Of(task.Id, land.Lead, $"neighbour.{land.Organization:N}@example.org", neighbourName);
        db.Add(watch);
        await db.SaveChangesAsync();
        return new(land, watch.Id);
    }

    public static CrewWatch Of(Guid task, Guid? lead, string neighbour, string neighbourName = "Nell Ashby")
    {
        var watch = new CrewWatch
        {
            TaskId = task,
            Day = new(2026, 2, 2),
            PeopleOnSite = 2,
            IntervalMinutes = 60,
            GraceMinutes = 15,
            EscalationMinutes = 10,
            StartedAt = Start,
            StartedBy = Tom.Name,
            DueAt = Start + Duration.FromMinutes(60),
            LinkKey = AlarmLink.NewKey(),
        };
        watch.Contacts.Add(new()
        {
            WatchId = watch.Id,
            Place = 0,
            PersonId = lead,
            Name = "Ada Birch",
            Address = $"ada.{watch.Id:N}@example.org",
        });
        watch.Contacts.Add(new() { WatchId = watch.Id, Place = 1, Name = neighbourName, Address = neighbour });
        watch.CheckIns.Add(new()
        {
            WatchId = watch.Id,
            Number = 0,
            Kind = CheckInKind.Started,
            At = Start,
            By = Tom.Name,
        });
        return watch;
    }

    public async Task<CrewWatch> ReadAsync()
    {
        await using var db = Land.Open();
        return await new WatchStore(db).All.SingleAsync(watch => watch.Id == Id);
    }

    /// <summary>Kind and contact's number of each message, in the order in which they were written.</summary>
    public async Task<string> MessagesAsync()
    {
        await using var db = Land.Open();
        var rows = await db.Messages.OrderBy(row => row.CreatedAt).ThenBy(row => row.DedupeKey).ToListAsync();
        return string.Join(", ", rows.Select(row =>
            $"{(row.Kind == NoticeKinds.MissedCheckIn ? "missed" : row.Kind)} to {row.ToAddress.Split('.')[0]}"));
    }
}
