using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Safety.CheckIns;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Browser.Tests.Site;

/// <summary>A third invented consultancy, one of whose crews should have checked in an hour ago.</summary>
/// <param name="Late">The task of that crew; its contact has been called.</param>
/// <param name="Unwatched">A hinge cut that nobody has begun.</param>
/// <param name="Unsigned">Hinge cuts of the same parcel, open today, that the lead has not signed.</param>
/// <param name="Calendar">The address of the crew lead's calendar feed.</param>
public sealed record WatchScenario(Guid Late, Guid Unwatched, IReadOnlyList<Guid> Unsigned, string Calendar)
{
    public const string Lead = "mina.crow@example.org";
    public const string Member = "nils.farrow@example.org";

    internal static async Task<WatchScenario> SeedAsync(TestDatabase database, IServiceProvider services)
    {
        var organization = await database.AddOrganizationAsync("Harrow Brook Forestry");
        var mina = await Scenario.AddPersonAsync(services, organization, Lead, "Mina Crow", Role.CrewLead);
        await Scenario.AddPersonAsync(services, organization, Member, "Nils Farrow", Role.CrewMember);
        await using var db = database.Open(organization);
        var property = new Property
        {
            Key = "harrow",
            Name = "Harrow Brook",
            CountyFips = "26161",
            State = "MI",
            TimeZone = "America/Detroit",
        };
        var parcel = new Parcel
        {
            PropertyId = property.Id,
            Key = "knoll",
            Name = "Hemlock Knoll",
            Latitude = 42.29,
            Longitude = -83.71,
            Stand = [new StandRow("sugar maple", 6, 12, 80)],
        };
        var (late, unwatched) = (NewTask("T1", parcel.Id, mina), NewTask("T2", parcel.Id, mina));
        var unsigned = Enumerable.Range(3, 6).Select(number => NewTask($"T{number}", parcel.Id, mina)).ToList();
        var weather = ScenarioWeather.Add(db);
        db.AddRange(property, parcel, late, unwatched, NewWatch(late.Id, mina));
        db.AddRange(unsigned);
        db.AddRange(Enum.GetValues<StationPurpose>().Select(purpose => new ParcelStation
        {
            ParcelId = parcel.Id,
            Purpose = purpose,
            StationId = weather.Id,
            DistanceM = 7_100,
        }));
        await db.SaveChangesAsync();
        return new(
            late.Id, unwatched.Id, [.. unsigned.Select(task => task.Id)],
            await CalendarScenario.SeedAsync(db, organization, mina));
    }

    private static PlannedTask NewTask(string key, Guid parcel, Guid lead) =>
        new() { Key = key, ParcelId = parcel, PracticeId = "hinge-cut", CrewSize = 1, CrewLeadId = lead };

    private static CrewWatch NewWatch(Guid task, Guid mina)
    {
        var started = Scenario.Now - Duration.FromHours(2);
        var watch = new CrewWatch
        {
            TaskId = task,
            Day = new(2026, 2, 3),
            PeopleOnSite = 2,
            IntervalMinutes = 60,
            GraceMinutes = 15,
            EscalationMinutes = 10,
            StartedAt = started,
            StartedById = mina,
            StartedBy = "Mina Crow",
            DueAt = started + Duration.FromHours(1),
            LinkKey = AlarmLink.NewKey(),
        };
        watch.Contacts.Add(new() { WatchId = watch.Id, Place = 0, Name = "Ada Birch", Address = "ada.birch@example.org" });
        watch.CheckIns.Add(new()
        {
            WatchId = watch.Id,
            Number = 0,
            Kind = CheckInKind.Started,
            At = started,
            ById = mina,
            By = "Mina Crow",
        });
        var missed = new MissedCheckIn
        {
            WatchId = watch.Id,
            DueAt = watch.DueAt,
            RaisedAt = watch.CalledAt,
            NextCallAt = watch.CalledAt + Duration.FromMinutes(10),
        };
        missed.Calls.Add(new() { MissedId = missed.Id, Number = 0, Place = 0, WrittenAt = watch.CalledAt });
        watch.Missed.Add(missed);
        return watch;
    }
}
