using NodaTime;
using WorkWindows.Engine.Rules.Reading;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Rules;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Weather;
using WorkWindows.Service.Windows;

namespace WorkWindows.Browser.Tests.Site;

/// <summary>A second invented consultancy, which has a rule of its own and reads the frost in the ground.</summary>
internal static class ExceptionScenario
{
    public const string Consultant = "ines.holt@example.org";

    private const string Rules =
        """
        pack: ashmere
        version: "1"
        title: Rules of Ashmere Woods
        level: organization
        rules:
          - id: ashmere.winter-rest
            title: Leave the wintering deer alone
            effect: closes
            scope: { practices: [tie-down] }
            when: { calendar: { from: 02-05, to: 02-20 } }
            because: Deer gather in the swale in February and lose strength when they are driven out of it.
            authority: common-practice
            source: { title: "common practice, no source" }
        """;

    /// <returns>A task of tying down that the consultancy's own rule closes from 5 February on.</returns>
    public static async Task<Guid> SeedAsync(TestDatabase database, IServiceProvider services)
    {
        var organization = await database.AddOrganizationAsync("Ashmere Woods");
        var ines = await Scenario.AddPersonAsync(services, organization, Consultant, "Ines Holt", Role.Consultant);
        await using var db = database.Open(organization);
        var property = new Property
        {
            Key = "ashmere",
            Name = "Ashmere",
            CountyFips = "26161",
            State = "MI",
            TimeZone = "America/Detroit",
        };
        var parcel = new Parcel
        {
            PropertyId = property.Id,
            Key = "swale",
            Name = "Deer Swale",
            Latitude = 42.29,
            Longitude = -83.71,
        };
        AddMildWeather(db, parcel.Id);
        var task = new PlannedTask { Key = "T1", ParcelId = parcel.Id, PracticeId = "tie-down", CrewSize = 2 };
        var pack = RulePackReader.Read(Rules);
        db.AddRange(property, parcel, task);
        db.Add(new StoredPack { Hash = pack.Hash, PackId = pack.Id, Version = pack.Version, Text = Rules });
        db.Add(new OrganizationPack
        {
            PackId = pack.Id,
            Version = pack.Version,
            Hash = pack.Hash,
            ChangedAt = Scenario.Now,
        });
        db.Add(new SiteReadingRow
        {
            PropertyId = property.Id,
            Signal = SignalKind.FrostDepthCm,
            Value = 20.32,
            Given = "8 in",
            SeenOn = new(2026, 2, 2),
            Until = new(2026, 2, 12),
            Note = "Two pits beside the landing.",
            RecordedById = ines,
            RecordedAt = Scenario.Now,
        });
        await db.SaveChangesAsync();
        return task.Id;
    }

    /// <summary>A forecast in which no rule of the shipped packs sends anybody home.</summary>
    private static void AddMildWeather(WorkWindowsDb db, Guid parcel)
    {
        var station = new Station
        {
            GhcnId = "USC00990002",
            Name = "Ashmere weir",
            Latitude = 42.25,
            Longitude = -83.7,
            WholeFahrenheit = true,
        };
        var forecast = new Service.Weather.Forecast
        {
            StationId = station.Id,
            IssuedAt = Scenario.Now,
            FetchedAt = Scenario.Now,
        };
        for (var date = new LocalDate(2026, 2, 3); date <= new LocalDate(2026, 2, 14); date = date.PlusDays(1))
        {
            forecast.Readings.Add(new() { Element = DailyElement.MinTemperatureC, Date = date, Value = -3 });
            forecast.Readings.Add(new() { Element = DailyElement.MaxTemperatureC, Date = date, Value = 2 });
            forecast.Readings.Add(new() { Element = DailyElement.GustMps, Date = date, Value = 4 });
        }
        db.AddRange(station, forecast);
        db.AddRange(Enum.GetValues<StationPurpose>().Select(purpose => new ParcelStation
        {
            ParcelId = parcel,
            StationId = station.Id,
            Purpose = purpose,
            DistanceM = 4_400,
        }));
    }
}
