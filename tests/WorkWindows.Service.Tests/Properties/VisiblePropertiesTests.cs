using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Tests.Hosting;

namespace WorkWindows.Service.Tests.Properties;

public sealed class VisiblePropertiesTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task List_ShowsLandownersTheirOwnOnly()
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        var owner = await service.AddPersonAsync(organization, "owner@example.org", Role.Landowner);
        await AddAsync(organization, "Own", owner);
        var others = await AddAsync(organization, "Neighbour", null);
        var (client, _) = await service.SignInAsync("owner@example.org");

        (await NamesAsync(client)).ShouldBe(["Own"]);
        (await client.GetAsync($"/api/properties/{others}")).StatusCode.ShouldBe(HttpStatusCode.NotFound);
    }

    [Theory]
    [InlineData(Role.Consultant)]
    [InlineData(Role.CrewLead)]
    [InlineData(Role.CrewMember)]
    public async Task List_ShowsEveryoneElseTheOrganizations(Role role)
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        await AddAsync(organization, "First", null);
        await AddAsync(organization, "Second", null);

        (await NamesAsync(await service.MachineAsync(organization, role))).ShouldBe(["First", "Second"]);
    }

    [Fact]
    public async Task Find_IsNotFound_ForAPropertyOfAnotherOrganization()
    {
        var theirs = await service.Database.AddOrganizationAsync("Theirs");
        var id = await AddAsync(theirs, "Theirs", null);
        var machine = await service.MachineAsync(await service.Database.AddOrganizationAsync("Ours"));

        var answer = await machine.GetAsync($"/api/properties/{id}");

        answer.StatusCode.ShouldBe(HttpStatusCode.NotFound);
        answer.Content.Headers.ContentType!.MediaType.ShouldBe("application/problem+json");
        (await NamesAsync(machine)).ShouldBeEmpty();
    }

    private async Task<Guid> AddAsync(Guid organization, string name, Guid? landownerId)
    {
        await using var db = service.Database.Open(organization);
        var property = new Property
        {
            Key = name,
            Name = name,
            LandownerId = landownerId,
            CountyFips = "26065",
            State = "MI",
            TimeZone = "America/Detroit",
        };
        db.Add(property);
        await db.SaveChangesAsync();
        return property.Id;
    }

    private static async Task<string?[]> NamesAsync(HttpClient client) =>
        [.. (await client.GetFromJsonAsync<JsonElement>("/api/properties")).EnumerateArray()
            .Select(property => property.GetProperty("name").GetString())];
}
