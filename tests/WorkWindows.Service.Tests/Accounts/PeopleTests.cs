using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;

namespace WorkWindows.Service.Tests.Accounts;

public sealed class PeopleTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Create_MakesAPersonWhoCanSignIn()
    {
        var consultant = await ConsultantAsync();

        var answer = await consultant.PostAsJsonAsync("/api/people", New("new@example.org"));

        answer.StatusCode.ShouldBe(HttpStatusCode.Created);
        (await consultant.GetStringAsync("/api/people")).ShouldContain("\"role\":\"crew-lead\"");
        (await service.SignInAsync("new@example.org")).Answer.StatusCode.ShouldBe(HttpStatusCode.Redirect);
    }

    [Fact]
    public async Task Create_NamesEveryFault()
    {
        var answer = await (await ConsultantAsync()).PostAsJsonAsync(
            "/api/people", New("no address", password: "short"));

        answer.StatusCode.ShouldBe(HttpStatusCode.BadRequest);
        var errors = (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("errors");
        errors.GetProperty("password")[0].GetString().ShouldBe("Passwords must be at least 12 characters.");
    }

    [Fact]
    public async Task Create_NamesEveryFault_OfAnEmptyBody()
    {
        var problem = await (await ConsultantAsync()).RefusedAsync(
            HttpMethod.Post, "/api/people", new { }, HttpStatusCode.BadRequest);

        foreach (var field in new[] { "email", "displayName", "role", "password" })
            problem.Error(field).ShouldStartWith("Missing");
        problem.Error("role").ShouldContain("consultant, crew-lead, crew-member, landowner");
        problem.Error("password").ShouldContain("at least 12 characters");
    }

    [Theory]
    [InlineData(null)]
    [InlineData("Consultant")]
    [InlineData("crew_lead")]
    public async Task NoOne_GetsARole_ThatWasNotSaidInTheWordsOfTheDocs(string? role)
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        var consultant = await service.MachineAsync(organization);
        var id = await service.AddPersonAsync(organization, $"{Guid.NewGuid():N}@example.org", Role.CrewMember);

        var created = await consultant.RefusedAsync(
            HttpMethod.Post, "/api/people",
            new { email = "roleless@example.org", displayName = "New", role, password = ServiceFixture.Password },
            HttpStatusCode.BadRequest);
        var changed = await consultant.RefusedAsync(
            HttpMethod.Put, $"/api/people/{id}", new { role }, HttpStatusCode.BadRequest);

        created.Error("role").ShouldContain("crew-lead");
        changed.Error("role").ShouldContain("crew-lead");
        changed.Error("displayName").ShouldStartWith("Missing");
        (await consultant.ReadAsync("/api/people")).EnumerateArray().ShouldHaveSingleItem()
            .Text("role").ShouldBe("crew-member");
    }

    [Fact]
    public async Task Refusal_NeverRepeatsAPassword()
    {
        var answer = await (await ConsultantAsync()).PostAsJsonAsync(
            "/api/people", New("quiet@example.org", password: "hush"));

        answer.StatusCode.ShouldBe(HttpStatusCode.BadRequest);
        (await answer.Content.ReadAsStringAsync()).ShouldNotContain("hush");
    }

    [Fact]
    public async Task Create_IsAConflict_WhenTheAddressSignsInElsewhere()
    {
        await (await ConsultantAsync()).PostAsJsonAsync("/api/people", New("twice@example.org"));

        var answer = await (await ConsultantAsync()).PostAsJsonAsync("/api/people", New("twice@example.org"));

        answer.StatusCode.ShouldBe(HttpStatusCode.Conflict);
        answer.Content.Headers.ContentType!.MediaType.ShouldBe("application/problem+json");
    }

    [Fact]
    public async Task SetPassword_ReplacesTheOldOne_AndKeepsItWhenTheNewIsRefused()
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        var consultant = await service.MachineAsync(organization);
        var id = await service.AddPersonAsync(organization, "forgetful@example.org", Role.CrewMember);
        var address = $"/api/people/{id}/password";

        (await consultant.PutAsJsonAsync(address, new { password = "short" })).StatusCode
            .ShouldBe(HttpStatusCode.BadRequest);
        (await consultant.RefusedAsync(HttpMethod.Put, address, new { }, HttpStatusCode.BadRequest))
            .Error("password").ShouldStartWith("Missing");
        (await service.SignInAsync("forgetful@example.org")).Answer.StatusCode.ShouldBe(HttpStatusCode.Redirect);
        (await consultant.PutAsJsonAsync(address, new { password = "another long one" })).StatusCode
            .ShouldBe(HttpStatusCode.NoContent);
        (await service.SignInAsync("forgetful@example.org")).Answer.StatusCode.ShouldBe(HttpStatusCode.OK);
        (await service.SignInAsync("forgetful@example.org", "another long one")).Answer.StatusCode
            .ShouldBe(HttpStatusCode.Redirect);
    }

    [Fact]
    public async Task Update_IsAConflict_WhenConsultantsChangeTheirOwnRole()
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        var id = await service.AddPersonAsync(organization, "only@example.org", Role.Consultant);
        var (consultant, _) = await service.SignInAsync("only@example.org");

        var answer = await consultant.PutAsJsonAsync(
            $"/api/people/{id}", new { displayName = "Only", role = "crew-lead" });

        answer.StatusCode.ShouldBe(HttpStatusCode.Conflict);
    }

    [Fact]
    public async Task Update_IsNotFound_ForAPersonOfAnotherOrganization()
    {
        var theirs = await service.Database.AddOrganizationAsync("Theirs");
        var id = await service.AddPersonAsync(theirs, "theirs@example.org", Role.CrewLead);

        var answer = await (await ConsultantAsync()).PutAsJsonAsync(
            $"/api/people/{id}", new { displayName = "Taken", role = "landowner" });

        answer.StatusCode.ShouldBe(HttpStatusCode.NotFound);
    }

    private static object New(string email, string password = ServiceFixture.Password) =>
        new { email, displayName = "New", role = "crew-lead", password };

    private async Task<HttpClient> ConsultantAsync() =>
        await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));
}
