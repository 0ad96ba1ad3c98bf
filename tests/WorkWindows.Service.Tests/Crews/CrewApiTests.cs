using System.Net;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;

namespace WorkWindows.Service.Tests.Crews;

public sealed class CrewApiTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Save_KeepsTheLeadAmongThePeople()
    {
        var (client, organization) = await OrganizationAsync();
        var (lead, member) = (await PersonAsync(organization, Role.CrewLead), await PersonAsync(organization, Role.CrewMember));

        var crew = await client.CreateAsync("/api/crews", new { name = "North", leadId = lead, memberIds = new[] { member } });
        await client.PutAsync($"/api/crews/{crew.Id()}", new { name = "North", leadId = lead, hoursPerDay = 6.5 });

        var stored = (await client.ReadAsync("/api/crews")).EnumerateArray().Single();
        stored.GetProperty("memberIds").EnumerateArray().Select(id => id.GetGuid()).ShouldBe([lead]);
        stored.GetProperty("hoursPerDay").GetDecimal().ShouldBe(6.5m);
    }

    [Fact]
    public async Task Save_NamesEveryFaultAtOnce()
    {
        var (client, organization) = await OrganizationAsync();
        var owner = await PersonAsync(organization, Role.Landowner);

        var problem = await client.RefusedAsync(HttpMethod.Post, "/api/crews", new
        {
            name = "",
            leadId = await PersonAsync(organization, Role.CrewMember),
            memberIds = new[] { owner },
            hoursPerDay = 20,
            baseLatitude = 43.1,
            firstDay = "2027-03-01",
            lastDay = "2027-02-01",
        }, HttpStatusCode.BadRequest);

        problem.Error("name").ShouldContain("a name of at most 200 characters");
        problem.Error("leadId").ShouldContain("a crew lead or consultant");
        problem.Error("memberIds").ShouldContain("who are not landowners");
        problem.Error("hoursPerDay").ShouldContain("up to 14");
        problem.Error("baseLongitude").ShouldContain("both of the base, or neither");
        problem.Error("lastDay").ShouldContain("2027-03-01 or a later day");
    }

    [Fact]
    public async Task Equipment_IsOfOneCrewOrOfAll_AndAbsencesAreOfOneThing()
    {
        var (client, organization) = await OrganizationAsync();
        var lead = await PersonAsync(organization, Role.Consultant);
        var crew = (await client.CreateAsync("/api/crews", new { name = "North", leadId = lead })).Id();
        var winch = (await client.CreateAsync("/api/equipment", new { name = "Winch 1", kind = "rope winch", crewId = crew })).Id();

        var problem = await client.RefusedAsync(HttpMethod.Post, "/api/absences",
            new { crewId = crew, equipmentId = winch, firstDay = "2027-02-01" }, HttpStatusCode.BadRequest);
        problem.Error("personId").ShouldContain("one of personId, crewId and equipmentId");
        var days = new { equipmentId = winch, firstDay = "2027-02-01", lastDay = "2027-02-05", reason = "in the workshop" };
        var (first, again) = (await client.CreateAsync("/api/absences", days), await client.CreateAsync("/api/absences", days));
        again.Id().ShouldBe(first.Id());
        await client.RefusedAsync(HttpMethod.Delete, $"/api/crews/{crew}", null, HttpStatusCode.Conflict);
    }

    [Fact]
    public async Task DriveTimes_ReplaceThoseBefore_OrNothingIsStored()
    {
        var (client, _) = await OrganizationAsync();
        var keys = new List<string>();
        foreach (var longitude in new[] { -84.4, -84.5 })
        {
            var (property, _) = await Land.CreateAsync(client, longitude, 42.6, "26065", "MI");
            keys.Add((await client.ReadAsync($"/api/properties/{property}")).Text("key"));
        }
        const string Address = "/api/imports/drive-times";

        var stored = await client.ImportAsync(Address, $"from,to,minutes\n{keys[0]},{keys[1]},25\n{keys[1]},{keys[0]},31.5\n");
        var repeated = await client.ImportAsync(Address, $"from,to,minutes\n{keys[0]},{keys[1]},25\n");
        var refused = await client.ImportAsync(Address, $"from,to,minutes\n{keys[0]},nowhere,25\n{keys[0]},{keys[1]},-4\n",
            HttpStatusCode.UnprocessableEntity);

        stored.GetProperty("created").GetInt32().ShouldBe(2);
        repeated.GetProperty("unchanged").GetInt32().ShouldBe(1);
        refused.GetProperty("faults").EnumerateArray().Select(fault => $"{fault.GetProperty("line")} {fault.Text("field")}")
            .ShouldBe(["2 to", "3 minutes"]);
    }

    private async Task<(HttpClient Client, Guid Organization)> OrganizationAsync()
    {
        var organization = await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}");
        return (await service.MachineAsync(organization), organization);
    }

    private Task<Guid> PersonAsync(Guid organization, Role role) =>
        service.AddPersonAsync(organization, $"p.{Guid.NewGuid():N}@example.org", role);
}
