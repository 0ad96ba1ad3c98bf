using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Shouldly;
using WorkWindows.Service.Accounts;

namespace WorkWindows.Service.Tests.Hosting;

public sealed class ProblemsTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Theory]
    [InlineData("[\n]", "Line 1: the value is not one of those accepted.")]
    [InlineData(
        "{\n  \"name\": 7,\n  \"role\": \"crew-lead\"\n}", "Line 2, field 'name': the value must be a text in quotes.")]
    [InlineData("{\n  \"name\": \"Tablet\",\n}", "Line 3: ")]
    [InlineData("{ \"name\": \"Tablet\", \"role\": \"crew-lead\", \"colour\": 1 }", "Line 1, field 'colour': ")]
    public async Task Api_NamesLineAndField_WhenTheBodyIsMalformed(string body, string detail)
    {
        var machine = await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));

        var answer = await machine.PostAsync(
            "/api/api-keys", new StringContent(body, Encoding.UTF8, "application/json"));

        answer.StatusCode.ShouldBe(HttpStatusCode.BadRequest);
        answer.Content.Headers.ContentType!.MediaType.ShouldBe("application/problem+json");
        (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("detail").GetString()!.ShouldStartWith(
            detail);
    }

    [Fact]
    public async Task Api_AnswersInProblemJson_WhenThereIsNoSuchAddress()
    {
        var machine = await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));

        var answer = await machine.GetAsync("/api/nothing");

        answer.StatusCode.ShouldBe(HttpStatusCode.NotFound);
        answer.Content.Headers.ContentType!.MediaType.ShouldBe("application/problem+json");
    }

    [Fact]
    public async Task Pages_AnswerInWords_WhenThereIsNoSuchPage()
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        await service.AddPersonAsync(organization, "lost@example.org", Role.CrewMember);
        var (client, _) = await service.SignInAsync("lost@example.org");

        var answer = await client.GetAsync("/nothing");

        answer.StatusCode.ShouldBe(HttpStatusCode.NotFound);
        (await answer.Content.ReadAsStringAsync()).ShouldContain("There is no such page");
    }

    [Fact]
    public async Task Api_IsUnauthorized_ForStrangers()
    {
        var answer = await service.Anonymous().GetAsync("/api/properties");

        answer.StatusCode.ShouldBe(HttpStatusCode.Unauthorized);
        answer.Content.Headers.ContentType!.MediaType.ShouldBe("application/problem+json");
    }
}
