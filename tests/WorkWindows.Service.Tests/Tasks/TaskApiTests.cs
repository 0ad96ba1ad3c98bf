using System.Net;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;

namespace WorkWindows.Service.Tests.Tasks;

public sealed class TaskApiTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Create_NamesEveryFaultAtOnce()
    {
        var client = await ConsultantAsync();

        var problem = await client.RefusedAsync(HttpMethod.Post, "/api/tasks", new
        {
            key = "k",
            parcelId = Guid.NewGuid(),
            practice = "dynamite",
            quantity = 3,
            crewSize = 0,
            prerequisiteIds = new[] { Guid.NewGuid() },
        }, HttpStatusCode.BadRequest);

        problem.Error("practice").ShouldContain(
            "'dynamite' is not accepted: give one of: overstory-felling, hinge-cut");
        problem.Error("parcelId").ShouldContain("a parcel that exists");
        problem.Error("quantityUnit").ShouldContain("acres, stems, feet, trees, hours");
        problem.Error("crewSize").ShouldContain("from 1 to 99");
        problem.Error("prerequisiteIds").ShouldContain("ids of tasks that exist");
    }

    [Fact]
    public async Task Create_KeepsWhatPlansGoBy_AndNamesWhatIsWrongWithIt()
    {
        var client = await ConsultantAsync();
        var (_, parcelId) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI");
        var (_, elsewhere) = await Land.CreateAsync(client, -84.5, 42.6, "26065", "MI");
        var other = await Land.TaskAsync(client, elsewhere, "hinge-cut");

        var made = await client.CreateAsync("/api/tasks", new
        {
            key = $"{Guid.NewGuid():N}",
            parcelId,
            practice = "tie-down",
            crewSize = 2,
            notBefore = "2026-03-01",
            hoursLow = 4,
            hoursHigh = 9,
            points = 30,
        });
        var problem = await client.RefusedAsync(HttpMethod.Post, "/api/tasks", new
        {
            key = $"{Guid.NewGuid():N}",
            parcelId,
            practice = "tie-down",
            crewSize = 2,
            notBefore = "2026-03-01",
            deadline = "2026-02-01",
            hoursLow = 4,
            points = -1,
            followsId = other.Id(),
        }, HttpStatusCode.BadRequest);

        (made.Text("notBefore"), made.Text("hoursHigh"), made.Text("points")).ShouldBe(("2026-03-01", "9", "30"));
        problem.Error("notBefore").ShouldContain("a day up to the deadline, 2026-02-01");
        problem.Error("hoursHigh").ShouldContain("exactly where there is a hoursLow");
        problem.Error("points").ShouldContain("from 0 to");
        problem.Error("followsId").ShouldContain("a task on the same parcel");
    }

    [Fact]
    public async Task Update_IsRefused_WhenPrerequisitesLeadBack()
    {
        var client = await ConsultantAsync();
        var (_, parcelId) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI");
        var first = await CreateAsync(client, parcelId, "first");
        var second = await CreateAsync(client, parcelId, "second", first);
        var third = await CreateAsync(client, parcelId, "third", second);

        var problem = await client.RefusedAsync(HttpMethod.Put, $"/api/tasks/{first}", new
        {
            parcelId,
            practice = "cleanup",
            crewSize = 2,
            prerequisiteIds = new[] { third },
        }, HttpStatusCode.BadRequest);

        problem.Error("prerequisiteIds").ShouldContain("'first after third after second after first' is not accepted");
        (await client.ReadAsync($"/api/tasks/{first}")).GetProperty("prerequisiteIds").GetArrayLength().ShouldBe(0);
    }

    [Fact]
    public async Task List_ShowsAPropertyOrAPractice()
    {
        var client = await ConsultantAsync();
        var (property, parcel) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI");
        var (_, elsewhere) = await Land.CreateAsync(client, -84.5, 42.6, "26065", "MI");
        var here = await Land.TaskAsync(client, parcel, "cleanup");
        var girdling = await Land.TaskAsync(client, elsewhere, "girdling");

        (await client.ReadAsync($"/api/tasks?propertyId={property}")).EnumerateArray().Single().Id().ShouldBe(
            here.Id());
        (await client.ReadAsync("/api/tasks?practice=girdling")).EnumerateArray().Single().Id().ShouldBe(girdling.Id());
    }

    [Fact]
    public async Task Complete_TakesADayThatHasCome_AndCanBeTakenBack()
    {
        var client = await ConsultantAsync();
        var (_, parcel) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI");
        var address = $"/api/tasks/{(await Land.TaskAsync(client, parcel, "cleanup")).Id()}/completion";

        // The fixture's clock stands at 1 March 2025.
        (await client.PutAsync(address, new { completedOn = "2025-02-28" })).Text("completedOn").ShouldBe("2025-02-28");
        (await client.PutAsync(address, new { completedOn = (string?)null })).Text("completedOn").ShouldBe("");
        await client.PutAsync(address, new { completedOn = "2025-02-28" });
        (await client.RefusedAsync(HttpMethod.Put, address, new { }, HttpStatusCode.BadRequest))
            .Text("field").ShouldBe("completedOn");
        (await client.ReadAsync(address[..address.LastIndexOf('/')])).Text("completedOn").ShouldBe("2025-02-28");
        var problem = await client.RefusedAsync(
            HttpMethod.Put, address, new { completedOn = "2025-03-02" }, HttpStatusCode.BadRequest);
        problem.Error("completedOn").ShouldContain("not to come yet");
    }

    [Fact]
    public async Task Landowners_SeeTasksOnTheirOwnLandOnly()
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        var client = await service.MachineAsync(organization);
        var owner = await service.AddPersonAsync(organization, "tasks.owner@example.org", Role.Landowner);
        var (property, parcel) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI");
        var (_, elsewhere) = await Land.CreateAsync(client, -84.5, 42.6, "26065", "MI");
        await client.PutAsync($"/api/properties/{property}", new
        {
            name = "Own",
            countyFips = "26065",
            state = "MI",
            landownerId = owner,
        });
        var own = await Land.TaskAsync(client, parcel, "cleanup");
        var others = await Land.TaskAsync(client, elsewhere, "cleanup");
        var (landowner, _) = await service.SignInAsync("tasks.owner@example.org");

        (await landowner.ReadAsync("/api/tasks")).EnumerateArray().Single().Id().ShouldBe(own.Id());
        (await landowner.ReadAsync("/api/week")).GetProperty("tasks").GetArrayLength().ShouldBe(1);
        await landowner.RefusedAsync(HttpMethod.Get, $"/api/tasks/{others.Id()}", null, HttpStatusCode.NotFound);
        await landowner.RefusedAsync(
            HttpMethod.Get, $"/api/tasks/{others.Id()}/windows", null, HttpStatusCode.NotFound);
        await landowner.RefusedAsync(HttpMethod.Delete, $"/api/tasks/{own.Id()}", null, HttpStatusCode.Forbidden);
        await landowner.RefusedAsync(HttpMethod.Get, "/api/weather/stations", null, HttpStatusCode.Forbidden);
    }

    private static async Task<Guid> CreateAsync(HttpClient client, Guid parcelId, string key, params Guid[] prerequisiteIds) =>
        (await client.CreateAsync("/api/tasks", new
        {
            key,
            parcelId,
            practice = "cleanup",
            crewSize = 2,
            prerequisiteIds,
        })).Id();

    private async Task<HttpClient> ConsultantAsync() =>
        await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));
}
