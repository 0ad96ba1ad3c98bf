using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Browser.Tests.Site;

/// <summary>An invented consultancy on Tuesday, 3 February 2026, at six in the morning.</summary>
/// <param name="HingeCut">Open, then limited by two cold nights, closed by the third, and closed again by wind.</param>
/// <param name="TieDown">Open but for the gale of Sunday, and unknown beyond the forecast.</param>
/// <param name="Felling">On a parcel without a weather station: unknown.</param>
/// <param name="Ridge">The parcel of the hinge cut.</param>
/// <param name="Swale">A parcel without a weather station.</param>
public sealed record Scenario(Guid HingeCut, Guid TieDown, Guid Felling, Guid Ridge, Guid Swale)
{
    public const string Password = "fern hollow morning";
    public const string Consultant = "rosa.lind@example.org";
    public const string Landowner = "amos.quill@example.org";
    public const string Newcomer = "tilda.marsh@example.org";

    /// <summary>Of the service's own demo, whose records are long enough for chances.</summary>
    public const string DemoConsultant = "mara.holt@example.org";
    public const string DemoPassword = "oak-hinge-2026";

    public static Instant Now { get; } = Instant.FromUtc(2026, 2, 3, 11, 0);

    public static async Task<Scenario> SeedAsync(TestDatabase database, IServiceProvider services)
    {
        var organization = await database.AddOrganizationAsync("Fernhollow Habitat");
        await AddPersonAsync(services, organization, Consultant, "Rosa Lind", Role.Consultant);
        await AddPersonAsync(services, organization, Newcomer, "Tilda Marsh", Role.Landowner);
        var amos = await AddPersonAsync(services, organization, Landowner, "Amos Quill", Role.Landowner);

        await using var db = database.Open(organization);
        var (farm, corner) = (NewProperty("Quill Farm", amos), NewProperty("Otter Corner", null));
        var ridge = NewParcel(farm, "Beech Ridge", 42.29, -83.71, new StandRow("sugar maple", 6, 12, 80));
        var hollow = NewParcel(farm, "Oak Hollow", 42.3, -83.72, new StandRow("northern red oak", 10, 18, 35));
        var swale = NewParcel(corner, "Long Swale", 42.6, -84.4);
        var hingeCut = NewTask("hinge-cut", ridge, 4.5m, "acres");
        hingeCut.ScheduledOn = new(2026, 2, 6);
        var tieDown = NewTask("tie-down", ridge, 120, "stems");
        var felling = NewTask("overstory-felling", swale, 3, "acres");
        var weather = ScenarioWeather.Add(db);
        db.AddRange(farm, corner, ridge, hollow, swale, hingeCut, tieDown, felling);
        db.AddRange(NewTask("trail-opening", hollow, 600, "feet"), NewTask("girdling", hollow, 40, "stems"));
        foreach (var parcel in new[] { ridge, hollow })
        {
            db.AddRange(Enum.GetValues<StationPurpose>().Select(purpose => new ParcelStation
            {
                ParcelId = parcel.Id,
                Purpose = purpose,
                StationId = weather.Id,
                DistanceM = 9_300,
                ElevationDifferenceM = -24,
            }));
        }
        await db.SaveChangesAsync();
        await ScenarioDecision.AddAsync(services, organization, hingeCut.Id);
        return new(hingeCut.Id, tieDown.Id, felling.Id, ridge.Id, swale.Id);
    }

    internal static async Task<Guid> AddPersonAsync(
        IServiceProvider services, Guid organization, string email, string name, Role role)
    {
        await using var scope = services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(organization);
        var person = new Person { UserName = email, Email = email, DisplayName = name, Role = role };
        var people = scope.ServiceProvider.GetRequiredService<UserManager<Person>>();
        Assert.True((await people.CreateAsync(person, Password)).Succeeded);
        return person.Id;
    }

    private static Property NewProperty(string name, Guid? landowner) => new()
    {
        Key = name,
        Name = name,
        LandownerId = landowner,
        CountyFips = "26161",
        State = "MI",
        TimeZone = "America/Detroit",
    };

    private static Parcel NewParcel(
        Property property, string name, double latitude, double longitude, params StandRow[] stand) => new()
        {
            PropertyId = property.Id,
            Key = name,
            Name = name,
            Latitude = latitude,
            Longitude = longitude,
            Stand = stand,
        };

    private static PlannedTask NewTask(string practice, Parcel parcel, decimal quantity, string unit) => new()
    {
        Key = $"{practice} {parcel.Name}",
        ParcelId = parcel.Id,
        PracticeId = practice,
        CrewSize = 3,
        Quantity = quantity,
        QuantityUnit = unit,
    };
}
