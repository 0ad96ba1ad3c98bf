using System.Net;
using Shouldly;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Rules;

namespace WorkWindows.Service.Tests.Properties;

/// <summary>The clock stands at 1 March 2025, seven in the morning on the property.</summary>
public sealed class SiteReadingApiTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Reading_StandsForItsDays_AndThenExpires()
    {
        var given = await OpenAsync();
        // For the week from today on nobody could be asked about alerts; the days after it are known to have none.
        (await given.StateAsync("2025-03-08")).ShouldBe("unknown");

        await given.Consultant.CreateAsync(given.Observations, Frost("8 in", "2025-03-10"));

        (await given.StateAsync("2025-03-08")).ShouldBe("open");
        (await given.StateAsync("2025-03-10")).ShouldBe("open");
        (await given.StateAsync("2025-03-11")).ShouldBe("unknown");
        (await given.StateAsync("2025-02-28")).ShouldBe("unknown");
    }

    [Fact]
    public async Task Reading_ShowsItsBasis_AndTheLatestCounts()
    {
        var given = await OpenAsync();
        await given.Consultant.CreateAsync(given.Observations, Frost("8 in", "2025-03-10"));

        await given.Consultant.CreateAsync(given.Observations, Frost("2 cm", "2025-03-10"));

        (await given.StateAsync("2025-03-05")).ShouldBe("closed");
        var day = await given.Consultant.ReadAsync($"/api/tasks/{given.Task}/days/2025-03-05");
        var finding = day.GetProperty("rules").EnumerateArray().Single(rule => rule.Text("id") == "frost.soft")
            .GetProperty("findings")[0];
        finding.Text("basis").ShouldBe("site-observation");
        finding.GetProperty("value").GetDouble().ShouldBe(2 / 2.54, 1e-9);
    }

    [Fact]
    public async Task Reading_TakenBack_LeavesWhatWasKnownBefore()
    {
        var given = await OpenAsync();
        var made = await given.Consultant.CreateAsync(given.Observations, Frost("8 in", "2025-03-10"));
        made.Text("recordedBy").ShouldBe(given.Name);

        (await given.Consultant.DeleteAsync($"{given.Observations}/{made.Id()}")).StatusCode
            .ShouldBe(HttpStatusCode.NoContent);

        (await given.StateAsync("2025-03-05")).ShouldBe("unknown");
        (await given.Consultant.ReadAsync(given.Observations)).GetArrayLength().ShouldBe(0);
        (await given.AuditAsync("?kind=site-reading")).ShouldBe(
            [$"site-reading by {given.Name}: nothing -> row", $"site-reading by {given.Name}: row -> nothing"]);
    }

    [Fact]
    public async Task Reading_SentTwice_IsKeptOnce()
    {
        var given = await OpenAsync();
        var first = await given.Consultant.CreateAsync(given.Observations, Frost("8 in", "2025-03-10"));
        var looks = given.Looks();

        var second = await given.Consultant.CreateAsync(given.Observations, Frost("8 in", "2025-03-10"));

        second.Id().ShouldBe(first.Id());
        given.Looks().ShouldBe(looks);
        (await given.AuditAsync("?kind=site-reading")).Length.ShouldBe(1);
    }

    [Theory]
    [InlineData("frost-depth", "8", "2025-03-01", "2025-03-05", "value", "a number, a space and a unit (in or cm)")]
    [InlineData(
        "frost-depth", "8 degF", "2025-03-01", "2025-03-05", "value", "a number, a space and a unit (in or cm)")]
    [InlineData("frost-depth", "500 in", "2025-03-01", "2025-03-05", "value", "0 to 400 in")]
    [InlineData("frost-depth", "8 in", "2025-03-01", null, "until", "from 2025-03-01 to 2025-03-15")]
    [InlineData("frost-depth", "8 in", "2025-03-01", "2025-03-16", "until", "from 2025-03-01 to 2025-03-15")]
    [InlineData("frost-depth", "8 in", "2025-03-02", "2025-03-05", "seenOn", "to 2025-03-01")]
    [InlineData("min-temperature", "18 degF", "2025-03-01", "2025-03-01", "seenOn", "to 2025-02-28")]
    [InlineData("gust", "5 mph", "2025-02-28", "2025-03-02", "until", "weather of a day says nothing of the next one")]
    [InlineData("red-flag", "0", "2025-03-01", "2025-03-01", "signal", "min-temperature, max-temperature, wind, gust")]
    [InlineData("dark-shift", "0 min", "2025-03-01", "2025-03-01", "signal", "snow-depth")]
    [InlineData("light-shift", "9 h", "2025-03-01", "2025-03-01", "signal", "snow-depth")]
    public async Task Reading_IsRefused_WithWhatWouldBeAccepted(
        string signal, string value, string seenOn, string? until, string field, string accepted)
    {
        var given = await OpenAsync();

        var problem = await given.Consultant.RefusedAsync(
            HttpMethod.Post, given.Observations, new { signal, value, seenOn, until }, HttpStatusCode.BadRequest);

        problem.Error(field).ShouldContain(accepted);
        (await given.Consultant.ReadAsync(given.Observations)).GetArrayLength().ShouldBe(0);
    }

    [Fact]
    public async Task Reading_IsAPersons_AndTheirOrganizationsAlone()
    {
        var (given, other) = (await OpenAsync(), await OpenAsync());
        var machine = await service.MachineAsync(given.Organization);

        await machine.RefusedAsync(
            HttpMethod.Post, given.Observations, Frost("8 in", "2025-03-05"), HttpStatusCode.Forbidden);
        await other.Consultant.RefusedAsync(
            HttpMethod.Post, given.Observations, Frost("8 in", "2025-03-05"), HttpStatusCode.NotFound);
        await other.Consultant.RefusedAsync(HttpMethod.Get, given.Observations, null, HttpStatusCode.NotFound);
    }

    private async Task<Consultancy> OpenAsync()
    {
        var given = await Consultancy.OpenAsync(service);
        await given.PutPackAsync(
            "pack: frost\nversion: \"1\"\ntitle: Frost\nlevel: organization\nrules:\n"
            + HousePack.Rule("frost.soft", "closes", "signal: frost-depth, below: 3 in"),
            "/api/rule-packs/frost");
        return given;
    }

    private static object Frost(string value, string until) =>
        new { signal = "frost-depth", value, seenOn = "2025-03-01", until, note = "Two pits on the north slope." };
}
