using System.Net;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;

namespace WorkWindows.Service.Tests.Properties;

public sealed class PropertyApiTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private static readonly string[] Noisy = ["noisy"];

    [Fact]
    public async Task Create_TakesTheTimeZoneOfTheCounty_AndTheAreaOfTheBoundary()
    {
        var client = await ConsultantAsync();

        // Iron County, Michigan, keeps Central time.
        var (property, parcel) = await Land.CreateAsync(client, -88.6, 46.1, "26071", "MI");

        (await client.ReadAsync($"/api/properties/{property}")).Text("timeZone").ShouldBe("America/Menominee");
        var areaM2 = (await client.ReadAsync($"/api/parcels/{parcel}")).GetProperty("areaM2").GetDouble();
        // 0.004° of latitude are 444.6 m and 0.005° of longitude 386.6 m at 46.1° north (WGS 84 series expansion).
        areaM2.ShouldBe(444.6 * 386.6, tolerance: 300);
    }

    [Fact]
    public async Task Create_NamesEveryFaultAtOnce()
    {
        var problem = await (await ConsultantAsync()).RefusedAsync(HttpMethod.Post, "/api/properties", new
        {
            key = "",
            countyFips = "26065",
            state = "PA",
            timeZone = "Michigan time",
            landownerId = Guid.NewGuid(),
            parcel = new { geometry = Land.Square(-40, 35), stand = Land.Stand("money tree"), flags = Noisy },
        }, HttpStatusCode.BadRequest);

        problem.Error("key").ShouldContain("1 to 60 characters");
        problem.Error("name").ShouldStartWith("Missing");
        problem.Error("countyFips").ShouldBe(
            "'26065' is not accepted: give the county's five digits as text, beginning with 42 for PA.");
        problem.Error("timeZone").ShouldContain("America/Detroit");
        problem.Error("landownerId").ShouldContain("a person of the organization");
        problem.Error("parcel.key").ShouldStartWith("Missing");
        problem.Error("parcel.geometry").ShouldContain("this one lies in the sea");
        problem.Error("parcel.stand[0].species").ShouldContain("northern red oak");
        problem.Error("parcel.flags").ShouldContain("quiet-on-deer-openers");
    }

    [Fact]
    public async Task Create_IsRefused_WhenTheBoundaryCrossesItself()
    {
        var client = await ConsultantAsync();
        var (property, _) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI");

        var problem = await client.RefusedAsync(HttpMethod.Post, $"/api/properties/{property}/parcels", new
        {
            key = "bow-tie",
            geometry = new
            {
                type = "Polygon",
                coordinates = new[]
                {
                    new double[][] { [-84.40, 42.60], [-84.39, 42.61], [-84.39, 42.60], [-84.40, 42.61], [-84.40, 42.60] },
                },
            },
        }, HttpStatusCode.BadRequest);

        problem.Error("geometry").ShouldContain("neither crosses nor overlaps itself");
    }

    [Fact]
    public async Task Create_IsAConflict_WhenTheKeyIsTaken()
    {
        var client = await ConsultantAsync();
        var form = new { key = "home", name = "Home", countyFips = "26065", state = "MI" };
        await client.CreateAsync("/api/properties", form);

        var problem = await client.RefusedAsync(HttpMethod.Post, "/api/properties", form, HttpStatusCode.Conflict);

        problem.Text("detail").ShouldBe("A property with the key 'home' exists already.");
    }

    [Fact]
    public async Task Update_ChangesEverythingButTheKey()
    {
        var client = await ConsultantAsync();
        var (id, _) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI");
        var form = new { name = "New name", countyFips = "26065", state = "MI", timeZone = "America/Chicago" };

        (await client.PutAsync($"/api/properties/{id}", form)).Text("timeZone").ShouldBe("America/Chicago");

        var renamed = new { key = "other", form.name, form.countyFips, form.state };
        var problem = await client.RefusedAsync(
            HttpMethod.Put, $"/api/properties/{id}", renamed, HttpStatusCode.BadRequest);
        problem.Error("key").ShouldContain("stays what it is");
    }

    [Fact]
    public async Task PutStandAndFlags_ReplaceThem()
    {
        var client = await ConsultantAsync();
        var (_, parcel) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI");

        await client.PutAsync($"/api/parcels/{parcel}/stand", new { stand = (object?)null });
        var changed = await client.PutAsync($"/api/parcels/{parcel}/flags", new { flags = Land.Quiet });

        changed.GetProperty("stand").ValueKind.ShouldBe(System.Text.Json.JsonValueKind.Null);
        changed.GetProperty("flags")[0].GetString().ShouldBe("quiet-on-deer-openers");
        var problem = await client.RefusedAsync(
            HttpMethod.Put, $"/api/parcels/{parcel}/stand", new { stand = Array.Empty<object>() }, HttpStatusCode.BadRequest);
        problem.Error("stand").ShouldContain("at least one");
    }

    [Theory]
    [InlineData("stand")]
    [InlineData("flags")]
    public async Task PutStandAndFlags_ChangeNothing_WhenTheMemberIsAbsent(string what)
    {
        var client = await ConsultantAsync();
        var (_, parcel) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI");
        await client.PutAsync($"/api/parcels/{parcel}/stand", new { stand = Land.Stand("white oak") });
        await client.PutAsync($"/api/parcels/{parcel}/flags", new { flags = Land.Quiet });
        var before = await client.GetStringAsync($"/api/parcels/{parcel}");

        var problem = await client.RefusedAsync(
            HttpMethod.Put, $"/api/parcels/{parcel}/{what}", new { }, HttpStatusCode.BadRequest);

        problem.Text("detail").ShouldBe($"Missing: '{what}'. Where nothing is meant, write null. Nothing was stored.");
        (await client.GetStringAsync($"/api/parcels/{parcel}")).ShouldBe(before);
    }

    [Fact]
    public async Task Delete_TakesParcelsAndTasksAlong()
    {
        var client = await ConsultantAsync();
        var (property, parcel) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI");
        var task = await Land.TaskAsync(client, parcel, "cleanup");

        (await client.DeleteAsync($"/api/properties/{property}")).StatusCode.ShouldBe(HttpStatusCode.NoContent);

        (await client.GetAsync($"/api/parcels/{parcel}")).StatusCode.ShouldBe(HttpStatusCode.NotFound);
        (await client.GetAsync($"/api/tasks/{task.Id()}")).StatusCode.ShouldBe(HttpStatusCode.NotFound);
    }

    [Theory]
    [InlineData(Role.CrewLead)]
    [InlineData(Role.CrewMember)]
    public async Task Crews_ReadAndDoNotWrite(Role role)
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        var (property, parcel) = await Land.CreateAsync(
            await service.MachineAsync(organization), -84.4, 42.6, "26065", "MI");
        var crew = await service.MachineAsync(organization, role);

        (await crew.ReadAsync($"/api/parcels/{parcel}")).Text("name").ShouldBe("Slope");
        await crew.RefusedAsync(HttpMethod.Delete, $"/api/properties/{property}", null, HttpStatusCode.Forbidden);
        await crew.RefusedAsync(
            HttpMethod.Put, $"/api/parcels/{parcel}/flags", new { flags = Array.Empty<string>() }, HttpStatusCode.Forbidden);
        (await crew.PostAsync("/api/imports/parcels", null)).StatusCode.ShouldBe(HttpStatusCode.Forbidden);
    }

    [Fact]
    public async Task OtherOrganizations_AreNotFound()
    {
        var (property, parcel) = await Land.CreateAsync(await ConsultantAsync(), -84.4, 42.6, "26065", "MI");
        var other = await ConsultantAsync();
        var form = new { name = "Mine now", countyFips = "26065", state = "MI" };

        await other.RefusedAsync(HttpMethod.Put, $"/api/properties/{property}", form, HttpStatusCode.NotFound);
        await other.RefusedAsync(HttpMethod.Delete, $"/api/properties/{property}", null, HttpStatusCode.NotFound);
        await other.RefusedAsync(HttpMethod.Get, $"/api/parcels/{parcel}", null, HttpStatusCode.NotFound);
        await other.RefusedAsync(HttpMethod.Get, $"/api/parcels/{parcel}/station", null, HttpStatusCode.NotFound);
    }

    private async Task<HttpClient> ConsultantAsync() =>
        await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));
}
