using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Shouldly;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Tests.Notices;
using WorkWindows.Service.Tests.Safety.Checklists;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Weather;
using Forecast = WorkWindows.Service.Weather.Forecast;

namespace WorkWindows.Service.Tests.Hosting;

/// <summary>Pages ask the database a fixed number of times, however much land, and however many stations, there are.</summary>
public sealed class PageCallsTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private static readonly Instant Now = Instant.FromUtc(2025, 3, 1, 12, 0);
    private static readonly string[] Zones = ["America/Detroit", "America/Chicago", "America/New_York"];

    private static readonly string[] ReviewForms = ["", "/pdf", "/csv"];

    /// <summary>Pages that need more than a task, a day, a parcel, a property or a person in their address.</summary>
    private static readonly string[] OfOtherThings =
        ["alarms/{organization:guid}/{call:guid}", "land/{organization:guid}", "unsubscribe/{organization:guid}/{person:guid}/{kind}"];

    [Fact]
    public async Task Pages_SendNoMoreThanTwelveCommands()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var property = await StoreAsync(given.Office.Organization);
        await LookAsync(given.Office.Organization);
        var (consultant, _) = await given.AddAsync(Role.Consultant);
        var (_, member) = await given.AddAsync(Role.CrewMember);
        var (_, owner) = await given.AddAsync(Role.Landowner);
        var crew = await given.Office.Consultant.CreateAsync("/api/crews", new { name = "North", leadId = given.LeadId, memberIds = new[] { member } });
        await given.Office.Consultant.CreateAsync(
            "/api/bookings", new { taskId = given.Task, crewId = crew.Id(), day = GivenChecklist.Day, hours = 2 });
        string[] pages =
        [
            .. service.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
                .Where(endpoint => endpoint.Metadata.GetMetadata<PageActionDescriptor>() is not null)
                .Select(endpoint => endpoint.RoutePattern.RawText!.TrimStart('/')).Distinct().Except(OfOtherThings)
                .Select(route => route.Replace("{date?}", GivenChecklist.Day).Replace("{date}", GivenChecklist.Day)
                    .Replace("{id:guid}", $"{Id(route)}")
                    .Replace("{**path}", "guide.md").Replace("{id}", route switch
                    {
                        "help/rules/{id}" => "oak-wilt.warm-spell",
                        "help/measures/{id}" => "saw-face",
                        _ => "hinge-cut",
                    })),
            $"review/{given.Task}/{GivenChecklist.Day}?replay=true", $"review/{given.Task}/{GivenChecklist.Day}?now=true",
            $"map?property={property}", $"api/tasks/{given.Task}/windows",
            .. ReviewForms.Select(form => $"api/tasks/{given.Task}/days/{GivenChecklist.Day}/review{form}"),
        ];

        var counts = new Dictionary<string, int>();
        foreach (var page in pages)
        {
            using var warm = await consultant.GetAsync($"/{page}");
            counts[$"{page} {(int)warm.StatusCode}"] = await service.Calls.OfAsync(() => consultant.GetAsync($"/{page}"));
        }

        counts.Where(page => page.Value > DatabaseCalls.Most || page.Key.EndsWith("404", StringComparison.Ordinal)).ShouldBeEmpty();

        Guid Id(string route) => route switch
        {
            _ when route.StartsWith("properties", StringComparison.Ordinal) => property,
            _ when route.StartsWith("parcels", StringComparison.Ordinal) => given.Office.Parcel,
            _ when route.StartsWith("people", StringComparison.Ordinal) => owner,
            _ => given.Task,
        };
    }

    /// <returns>The id of a property with parcels at several stations.</returns>
    private async Task<Guid> StoreAsync(Guid organization)
    {
        await using var db = service.Database.Open(organization);
        var properties = Zones.Select((zone, index) => new Property
        {
            Key = $"P{index}",
            Name = $"Property {index}",
            CountyFips = "26065",
            State = "MI",
            TimeZone = zone,
        }).ToList();
        db.AddRange(properties);
        for (var index = 0; index < 9; index++)
        {
            var (latitude, longitude) = (41.5 + index * 0.4, -84.5 - index * 0.4);
            var parcel = new Parcel { PropertyId = properties[index % 3].Id, Key = $"K{index}", Name = $"Parcel {index}", Latitude = latitude, Longitude = longitude };
            var station = new Station { GhcnId = $"USC0020000{index}", Name = $"Station {index}", Latitude = latitude, Longitude = longitude, WholeFahrenheit = true };
            var forecast = new Forecast { StationId = station.Id, IssuedAt = Now, FetchedAt = Now };
            forecast.Readings.Add(new() { Element = DailyElement.MaxTemperatureC, Date = new(2025, 3, 2), Value = 1 });
            db.AddRange(
                parcel, station, forecast, new WeatherAlertReport { StationId = station.Id, FetchedAt = Now },
                new ParcelStation { ParcelId = parcel.Id, StationId = station.Id, Purpose = StationPurpose.Temperature, DistanceM = 900 },
                GivenLand.NewTask(parcel.Id, $"T{index}", "hinge-cut"));
        }
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        return properties[0].Id;
    }

    private async Task LookAsync(Guid organization)
    {
        await using var scope = service.Services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<NightlyRun>().LookAsync(organization, TestContext.Current.CancellationToken);
    }
}
