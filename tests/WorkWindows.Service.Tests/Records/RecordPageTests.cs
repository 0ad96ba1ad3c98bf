using System.Net;
using Microsoft.EntityFrameworkCore;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;
using WorkWindows.Service.Tests.Weather;

namespace WorkWindows.Service.Tests.Records;

/// <summary>Minneapolis-St Paul airport, 1996 to 2014. The clock stands at 1 March 2025.</summary>
public sealed class RecordPageTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Page_ShowsTheRecordToThoseWhoSeeTheLand_AndIsNotThereForOthers()
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        var machine = await service.MachineAsync(organization);
        await GivenStation.MinneapolisAsync(machine, year => year is >= 1996 and <= 2014);
        var (property, parcel) = await Land.CreateAsync(machine, -93.2, 44.9, "27053", "MN", "red maple");
        var (_, others) = await Land.CreateAsync(machine, -93.2, 44.9, "27053", "MN");
        await Land.TaskAsync(machine, parcel, "hinge-cut");
        var owner = await service.AddPersonAsync(organization, "owner@example.org", Role.Landowner);
        await using (var db = service.Database.Open(organization))
        {
            await db.Properties.Where(row => row.Id == property)
                .ExecuteUpdateAsync(row => row.SetProperty(found => found.LandownerId, owner));
        }
        var (landowner, _) = await service.SignInAsync("owner@example.org");

        var worker = WebUtility.HtmlDecode(await machine.GetStringAsync($"/parcels/{parcel}/weather?range=all"));
        var seen = WebUtility.HtmlDecode(await landowner.GetStringAsync($"/parcels/{parcel}/weather"));

        worker.ShouldContain("Weather of Slope");
        worker.ShouldContain("Readings that are not used");
        worker.ShouldContain("Temperatures: USW00014922 (USW00014922)");
        worker.ShouldContain("minimum temperature below 20 °F closes");
        worker.ShouldContain("leaf-out needs 209 °F-days");
        worker.ShouldContain("go on from what is known");
        seen.ShouldContain("Weather of Slope");
        seen.ShouldNotContain("Readings that are not used");
        (await landowner.GetAsync($"/parcels/{others}/weather")).StatusCode.ShouldBe(HttpStatusCode.NotFound);
        (await machine.GetAsync($"/parcels/{Guid.NewGuid()}/weather")).StatusCode.ShouldBe(HttpStatusCode.NotFound);
        (await machine.GetAsync($"/parcels/{parcel}/weather?range=decade")).StatusCode.ShouldBe(
            HttpStatusCode.NotFound);
        var elsewhere = await service.MachineAsync(await service.Database.AddOrganizationAsync("Other"));
        (await elsewhere.GetAsync($"/parcels/{parcel}/weather")).StatusCode.ShouldBe(HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task Page_SaysSo_WithoutAStation()
    {
        var machine = await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));
        var (_, parcel) = await Land.CreateAsync(machine, -84.4, 42.6, "26065", "MI");

        var page = await machine.GetStringAsync($"/parcels/{parcel}/weather");

        page.ShouldContain("No weather station is assigned to Slope");
        page.ShouldContain("No work is planned here");
        await Land.TaskAsync(machine, parcel, "hinge-cut");
        (await machine.GetStringAsync("/week")).ShouldContain("No weather station is assigned");
    }
}
