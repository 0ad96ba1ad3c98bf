using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;

namespace WorkWindows.Service.Tests.Accounts;

public sealed class ApiKeyTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Create_ShowsASecretThatWorks_UntilItIsRevoked()
    {
        var consultant = await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));
        var answer = await consultant.PostAsJsonAsync("/api/api-keys", new { name = "Tablet", role = "crew-lead" });
        var created = await answer.Content.ReadFromJsonAsync<JsonElement>();
        var tablet = With(created.GetProperty("secret").GetString()!);

        answer.StatusCode.ShouldBe(HttpStatusCode.Created);
        (await tablet.GetAsync("/api/properties")).StatusCode.ShouldBe(HttpStatusCode.OK);
        (await tablet.GetAsync("/api/people")).StatusCode.ShouldBe(HttpStatusCode.Forbidden);
        (await consultant.DeleteAsync($"/api/api-keys/{created.GetProperty("id").GetString()}")).StatusCode
            .ShouldBe(HttpStatusCode.NoContent);
        (await tablet.GetAsync("/api/properties")).StatusCode.ShouldBe(HttpStatusCode.Unauthorized);
        (await consultant.GetStringAsync("/api/api-keys")).ShouldNotContain("secret");
    }

    [Theory]
    [InlineData("")]
    [InlineData("ww")]
    [InlineData("ww.a.b.c")]
    [InlineData("ww.00000000000070008000000000000000.00000000000070008000000000000000.AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA")]
    public async Task Request_IsUnauthorized_WhenTheKeyIsNotOne(string key) =>
        (await With(key).GetAsync("/api/properties")).StatusCode.ShouldBe(HttpStatusCode.Unauthorized);

    [Fact]
    public async Task Request_IsUnauthorized_WhenTheKeyIsSentForAnotherOrganization()
    {
        var (ours, theirs) = (
            await service.Database.AddOrganizationAsync("Ours"), await service.Database.AddOrganizationAsync("Theirs"));
        var machine = await service.MachineAsync(ours);
        var key = machine.DefaultRequestHeaders.Authorization!.Parameter!;

        var answer = await With(key.Replace($"{ours:N}", $"{theirs:N}")).GetAsync("/api/properties");

        answer.StatusCode.ShouldBe(HttpStatusCode.Unauthorized);
    }

    [Fact]
    public async Task Create_IsRefused_ForALandowner()
    {
        var consultant = await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));

        var answer = await consultant.PostAsJsonAsync("/api/api-keys", new { name = "Gate", role = "landowner" });

        answer.StatusCode.ShouldBe(HttpStatusCode.BadRequest);
        (await answer.Content.ReadAsStringAsync()).ShouldContain("A machine owns no land");
    }

    [Theory]
    [InlineData(null, "Missing: give one of: consultant, crew-lead, crew-member")]
    [InlineData("Consultant", "'Consultant' is not accepted")]
    [InlineData("CREW-LEAD", "'CREW-LEAD' is not accepted")]
    [InlineData("crewLead", "'crewLead' is not accepted")]
    [InlineData("0", "'0' is not accepted")]
    [InlineData("", "'' is not accepted")]
    public async Task Create_IsRefused_WithoutARoleInTheWordsOfTheDocs(string? role, string why)
    {
        var consultant = await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));

        var problem = await consultant.RefusedAsync(
            HttpMethod.Post, "/api/api-keys", new { name = "Tablet", role }, HttpStatusCode.BadRequest);

        problem.Error("role").ShouldContain(why);
        (await consultant.GetStringAsync("/api/api-keys")).ShouldNotContain("Tablet");
    }

    [Fact]
    public async Task Create_NamesEveryFault_OfAnEmptyBody()
    {
        var consultant = await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));

        var problem = await consultant.RefusedAsync(
            HttpMethod.Post, "/api/api-keys", new { }, HttpStatusCode.BadRequest);

        problem.Error("name").ShouldStartWith("Missing");
        problem.Error("role").ShouldStartWith("Missing");
    }

    [Theory]
    [InlineData(Role.CrewLead)]
    [InlineData(Role.CrewMember)]
    public async Task Create_IsForbidden_ForOthersThanConsultants(Role role)
    {
        var machine = await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"), role);

        var answer = await machine.PostAsJsonAsync("/api/api-keys", new { name = "Mine", role = "consultant" });

        answer.StatusCode.ShouldBe(HttpStatusCode.Forbidden);
    }

    private HttpClient With(string key)
    {
        var client = service.Anonymous();
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", key);
        return client;
    }
}
