using System.Net;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Shouldly;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;
using WorkWindows.Service.Tests.Weather;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tests.Windows;

/// <summary>
/// Minneapolis-St Paul airport, 1998 to 2014 with wind: NOAA GHCN-Daily (Menne et al. 2012, doi:10.7289/V5D21VHZ). The
/// clock stands at 1 March 2025.
/// </summary>
public sealed class ChancesApiTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Chances_TellEachDay_AndWhenATaskOpensAndCloses()
    {
        var (client, task) = await HingeCutAsync(year => year is >= 1998 and <= 2014, alertsAreKnown: true);

        var view = await client.ReadAsync($"/api/tasks/{task}/chances");

        (view.Text("today"), view.Text("timeZone")).ShouldBe(("2025-03-01", "America/Chicago"));
        view.GetProperty("pastYears").GetArrayLength().ShouldBeInRange(15, 17);
        var days = view.GetProperty("days").EnumerateArray().ToDictionary(day => day.Text("date"));
        days.Count.ShouldBe(365);
        // Closed by the calendar from October to January, whatever the weather.
        days["2025-11-15"].GetProperty("chance").GetDouble().ShouldBe(0);
        days["2025-03-08"].GetProperty("chance").GetDouble().ShouldBeInRange(0.05, 0.95);
        view.GetProperty("leafOut").Text("p50").ShouldBeInRange("2025-04-10", "2025-05-20");
        view.GetProperty("closes").Text("p50").ShouldBeInRange("2025-03-20", "2025-05-20");
        view.GetProperty("workableDays").GetDouble().ShouldBeInRange(5, 60);
    }

    // Nobody has asked for alerts: for a week no day is known, and so neither is whether the task opens on one of them.
    [Fact]
    public async Task Chances_TellNoOpening_WhenAlertsAreNotKnown()
    {
        var (client, task) = await HingeCutAsync(year => year is >= 1998 and <= 2014);

        var view = await client.ReadAsync($"/api/tasks/{task}/chances");

        view.GetProperty("opens").GetProperty("p50").ValueKind.ShouldBe(JsonValueKind.Null);
        view.GetProperty("opens").GetProperty("unknown").GetInt32()
            .ShouldBeGreaterThan(view.GetProperty("pastYears").GetArrayLength() / 10);
        view.GetProperty("workableDays").ValueKind.ShouldBe(JsonValueKind.Null);
        view.GetProperty("days")[0].GetProperty("chance").ValueKind.ShouldBe(JsonValueKind.Null);
        view.GetProperty("days")[7].GetProperty("chance").ValueKind.ShouldBe(JsonValueKind.Number);
    }

    [Fact]
    public async Task Chances_AreNotTold_WithFewerThanFifteenYears()
    {
        var (client, task) = await HingeCutAsync(year => year is >= 2005 and <= 2014);

        var view = await client.ReadAsync($"/api/tasks/{task}/chances");

        (view.GetProperty("pastYears").GetArrayLength(), view.GetProperty("days").GetArrayLength()).ShouldBe((0, 0));
        view.GetProperty("opens").ValueKind.ShouldBe(JsonValueKind.Null);
    }

    [Fact]
    public async Task Chances_RefuseADateThatIsNone_AndATaskThatIsNotThere()
    {
        var (client, task) = await HingeCutAsync(year => year == 2014);

        (await client.GetAsync($"/api/tasks/{task}/chances?to=soon")).StatusCode.ShouldBe(HttpStatusCode.BadRequest);
        (await client.GetAsync($"/api/tasks/{Guid.NewGuid()}/chances")).StatusCode.ShouldBe(HttpStatusCode.NotFound);
    }

    private async Task<(HttpClient Client, Guid Task)> HingeCutAsync(
        Func<int, bool> years, bool alertsAreKnown = false)
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        var client = await service.MachineAsync(organization);
        await GivenStation.MinneapolisAsync(client, years);
        var (_, parcel) = await Land.CreateAsync(client, -93.2, 44.9, "27053", "MN", "red maple");
        await client.PutAsync($"/api/parcels/{parcel}/station", new
        {
            temperature = GivenStation.Minneapolis,
            wind = GivenStation.Minneapolis,
        });
        if (alertsAreKnown)
            await ReportAlertsAsync(organization);
        return (client, (await Land.TaskAsync(client, parcel, "hinge-cut")).Id());
    }

    /// <summary>A report of a minute ago, without any alert.</summary>
    private async Task ReportAlertsAsync(Guid organization)
    {
        await using var scope = service.Services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(organization);
        var db = scope.ServiceProvider.GetRequiredService<WorkWindowsDb>();
        var station = await db.Stations.SingleAsync(TestContext.Current.CancellationToken);
        var now = scope.ServiceProvider.GetRequiredService<IClock>().GetCurrentInstant();
        db.Add(new WeatherAlertReport { StationId = station.Id, FetchedAt = now - Duration.FromMinutes(1) });
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
    }
}
