using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Weather;
using Forecast = WorkWindows.Service.Weather.Forecast;

namespace WorkWindows.Service.Tests.Notices;

/// <summary>An organization with an owner, a crew lead, a property and one task, stored.</summary>
internal sealed record GivenLand(
    TestDatabase Database, Guid Organization, Guid Owner, Guid Lead, Guid Parcel, Guid Station)
{
    public static async Task<GivenLand> StoreAsync(
        TestDatabase database, string practice = "hinge-cut", string zone = "America/Detroit")
    {
        var organization = await database.AddOrganizationAsync("Quiet Ridge Consulting");
        await using var db = database.Open(organization);
        var owner = Person("nell", Role.Landowner);
        var lead = Person("tom", Role.CrewLead);
        var property = new Property
        {
            Key = "CH",
            Name = "Cedar Hollow",
            LandownerId = owner.Id,
            CountyFips = "26065",
            State = "MI",
            TimeZone = zone,
        };
        var parcel = new Parcel
        {
            PropertyId = property.Id,
            Key = "CH-N",
            Name = "North Forty",
            Latitude = 42.7,
            Longitude = -84.5,
            Stand = [new("sugar maple", 4, 8, 120)],
        };
        var station = new Station
        {
            GhcnId = "USC00200001",
            Name = "Larkspur",
            Latitude = 42.7,
            Longitude = -84.5,
            WholeFahrenheit = true,
        };
        var link = new ParcelStation
        {
            ParcelId = parcel.Id,
            StationId = station.Id,
            Purpose = StationPurpose.Temperature,
            DistanceM = 900,
        };
        var task = NewTask(parcel.Id, "T-1", practice, lead.Id);
        db.AddRange(owner, lead, property, parcel, station, link, task);
        await db.SaveChangesAsync();
        return new(database, organization, owner.Id, lead.Id, parcel.Id, station.Id);
    }

    public WorkWindowsDb Open() => Database.Open(Organization);

    /// <summary>Stores a forecast of the coming days: o open, c closed by gusts, u without gusts.</summary>
    public async Task ForecastAsync(string days, LocalDate first, Instant issuedAt)
    {
        await using var db = Open();
        var forecast = new Forecast { StationId = Station, IssuedAt = issuedAt, FetchedAt = issuedAt };
        for (var day = 0; day < days.Length; day++)
        {
            Add(DailyElement.MinTemperatureC, -3);
            Add(DailyElement.MaxTemperatureC, 1);
            Add(DailyElement.WindMps, 2);
            Add(DailyElement.PrecipitationMm, 0);
            if (days[day] != 'u')
                Add(DailyElement.GustMps, days[day] == 'c' ? 13 : 4);

            void Add(DailyElement element, double value) =>
                forecast.Readings.Add(new() { Element = element, Date = first.PlusDays(day), Value = value });
        }
        db.Add(forecast);
        await db.SaveChangesAsync();
    }

    /// <summary>Stores an answer of the weather service without alerts.</summary>
    public async Task NoAlertsAsync(Instant fetchedAt)
    {
        await using var db = Open();
        db.Add(new WeatherAlertReport { StationId = Station, FetchedAt = fetchedAt });
        await db.SaveChangesAsync();
    }

    public async Task AddConsultantAsync()
    {
        await using var db = Open();
        db.Add(Person("ada", Role.Consultant));
        await db.SaveChangesAsync();
    }

    public static PlannedTask NewTask(Guid parcel, string key, string practice, Guid? lead = null) =>
        new() { Key = key, ParcelId = parcel, PracticeId = practice, CrewSize = 2, CrewLeadId = lead };

    private static Person Person(string name, Role role)
    {
        // Addresses are unique across organizations.
        var address = $"{name}.{Guid.NewGuid():N}@example.org";
        return new()
        {
            DisplayName = name,
            Role = role,
            Email = address,
            UserName = address,
            NormalizedUserName = address.ToUpperInvariant(),
            SecurityStamp = name,
        };
    }
}
