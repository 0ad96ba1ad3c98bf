using System.Net;
using System.Text.Json;
using Shouldly;
using WorkWindows.Service.Tests.Hosting;

namespace WorkWindows.Service.Tests.Windows;

public sealed class ExplanationTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    // The file has minima of -16.1, -17.8 and -17.8 °C on 24 to 26 January 2004: 3, 0 and 0 °F.
    [Fact]
    public async Task Explanation_SaysWhatBinds_WhenItLetsGo_AndWhatAloneWouldChangeIt()
    {
        var (client, task) = await HingeCutAsync();

        var explanation = await client.ReadAsync($"/api/tasks/{task}/explanation?date=2004-01-26");

        explanation.GetProperty("day").Text("state").ShouldBe("closed");
        var coldRun = explanation.GetProperty("binding").EnumerateArray().Single(
            rule => rule.Text("id") == "hinge.cold-run");
        // Eight more nights stay below; that of 4 February, at -2.8 °C, does not.
        coldRun.Text("letsGoOn").ShouldBe("2004-02-04");
        var change = explanation.GetProperty("changes").EnumerateArray()
            .First(change => change.Text("what") == "minimum temperature");
        // At 20 °F the hinges would bend, but the wind chill would still have to be known.
        (change.Text("is"), change.Text("wouldBe")).ShouldBe(("0 °F", "above 20 °F"));
        explanation.GetProperty("sinceDecision").ValueKind.ShouldBe(JsonValueKind.Null);
    }

    [Fact]
    public async Task Explanation_OfToday_NeedsNoDate()
    {
        var (client, task) = await HingeCutAsync();

        var explanation = await client.ReadAsync($"/api/tasks/{task}/explanation");

        explanation.GetProperty("day").Text("date").ShouldBe("2025-03-01");
    }

    [Fact]
    public async Task Explanation_SaysWhatChangedSinceTheDecision_AndWhy()
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        var client = await service.MachineAsync(organization);
        var (property, task) = await GivenHingeCut.CreateAsync(client);
        await GivenHingeCut.DecideAsync(service, organization);

        await client.PutAsync(
            $"/api/properties/{property}/observations/leaf-out/2004", new { observedOn = "2004-05-20" });
        var since = (await client.ReadAsync($"/api/tasks/{task}/explanation?date=2004-05-10")).GetProperty(
            "sinceDecision");

        // Not open: nobody has forecast thunder for days long past, and in May there may be some.
        since.GetProperty("days").EnumerateArray().ShouldContain(
            day => day.ToString().EndsWith("was closed, now limited"));
        since.GetProperty("causes").EnumerateArray().ShouldContain(cause =>
            cause.ToString().StartsWith("leaf-out 2004: was ")
                && cause.ToString().EndsWith("now 20 May 2004 (seen on the property)"));
    }

    [Fact]
    public async Task Explanation_NamesAWrongDate()
    {
        var (client, task) = await HingeCutAsync();

        (await client.RefusedAsync(
            HttpMethod.Get, $"/api/tasks/{task}/explanation?date=tomorrow", null, HttpStatusCode.BadRequest))
            .Error("date").ShouldContain("a date such as 2025-01-31");
        await client.RefusedAsync(
            HttpMethod.Get, $"/api/tasks/{Guid.NewGuid()}/explanation", null, HttpStatusCode.NotFound);
    }

    private async Task<(HttpClient Client, Guid Task)> HingeCutAsync()
    {
        var client = await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));
        return (client, (await GivenHingeCut.CreateAsync(client)).Task);
    }
}
