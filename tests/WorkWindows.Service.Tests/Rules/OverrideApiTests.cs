using System.Net;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;

namespace WorkWindows.Service.Tests.Rules;

/// <summary>The clock stands at 1 March 2025, seven in the morning on the property.</summary>
public sealed class OverrideApiTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Reason = "The forester agreed on the spot.";

    [Fact]
    public async Task Exception_LeavesItsDaysLimited_NamesWhoMadeItAndWhy_UntilItExpires()
    {
        var given = await OpenAsync();
        (await given.StateAsync("2025-03-08")).ShouldBe("closed");

        var made = await given.Consultant.CreateAsync(given.Overrides, Form(lastDay: "2025-03-10"));

        (made.Text("madeBy"), made.Text("firstDay"), made.Text("reason")).ShouldBe((given.Name, "2025-03-01", Reason));
        (await given.StateAsync("2025-03-08")).ShouldBe("limited");
        (await given.StateAsync("2025-03-10")).ShouldBe("limited");
        (await given.StateAsync("2025-03-11")).ShouldBe("closed");
        var day = await given.Consultant.ReadAsync($"/api/tasks/{given.Task}/days/2025-03-08");
        var rule = day.GetProperty("rules").EnumerateArray().Single(rule => rule.Text("id") == "house.quiet");
        (rule.Text("truth"), rule.Text("decides")).ShouldBe(("fails", "True"));
        var lifting = rule.GetProperty("lifting");
        (lifting.Text("by"), lifting.Text("reason"), lifting.Text("last")).ShouldBe((given.Name, Reason, "2025-03-10"));
    }

    [Fact]
    public async Task Exception_ToALimit_LeavesTheDayLimited()
    {
        var given = await OpenAsync();

        await given.Consultant.CreateAsync(given.Overrides, Form("house.care", "2025-04-05"));

        (await given.StateAsync("2025-04-05")).ShouldBe("limited");
        var day = await given.Consultant.ReadAsync($"/api/tasks/{given.Task}/days/2025-04-05");
        day.GetProperty("rules").EnumerateArray().Single(rule => rule.Text("id") == "house.care")
            .GetProperty("lifting").Text("by").ShouldBe(given.Name);
    }

    [Fact]
    public async Task Exception_CountsForItsTaskOrParcelAlone()
    {
        var given = await OpenAsync();
        var other = (await Land.TaskAsync(given.Consultant, given.Parcel, "tie-down")).Id();

        await given.Consultant.CreateAsync(given.Overrides, Form() with { TaskId = given.Task });

        (await given.StateAsync("2025-03-08")).ShouldBe("limited");
        (await given.StateAsync("2025-03-08", other)).ShouldBe("closed");
        await given.Consultant.CreateAsync(given.Overrides, Form() with { ParcelId = given.Parcel });
        (await given.StateAsync("2025-03-08", other)).ShouldBe("limited");
    }

    [Fact]
    public async Task Withdrawal_EndsItAtOnce_AndKeepsTheRow()
    {
        var given = await OpenAsync();
        var made = await given.Consultant.CreateAsync(given.Overrides, Form());
        var (address, looks) = ($"{given.Overrides}/{made.Id()}", given.Looks());

        (await given.Consultant.DeleteAsync(address)).StatusCode.ShouldBe(HttpStatusCode.NoContent);
        (await given.Consultant.DeleteAsync(address)).StatusCode.ShouldBe(HttpStatusCode.NoContent);

        (await given.StateAsync("2025-03-08")).ShouldBe("closed");
        var row = (await given.Consultant.ReadAsync(given.Overrides)).EnumerateArray().ShouldHaveSingleItem();
        row.Text("withdrawnAt").ShouldBe("2025-03-01T12:00:00Z");
        row.Text("withdrawnById").ShouldBe(made.Text("madeById"));
        given.Looks().ShouldBe(looks + 1);
        (await given.AuditAsync("?kind=override")).ShouldBe(
            [$"override by {given.Name}: nothing -> row", $"override by {given.Name}: row -> row"]);
    }

    [Theory]
    [InlineData("house.law", "is a regulation")]
    [InlineData("house.limb", "keeps people from being hurt")]
    [InlineData("house.vest", "neither closes nor limits")]
    [InlineData("crew.contact", "is a regulation")]
    [InlineData("no.such-rule", "No rule pack of the property has a rule 'no.such-rule'")]
    public async Task Exception_IsNeverMade_ToARuleThatMustStand(string ruleId, string why)
    {
        var given = await OpenAsync();

        var problem = await given.Consultant.RefusedAsync(
            HttpMethod.Post, given.Overrides, Form(ruleId), HttpStatusCode.UnprocessableEntity);

        problem.Text("detail").ShouldContain(why);
        (problem.Text("field"), problem.Text("value")).ShouldBe(("ruleId", ruleId));
        (await given.Consultant.ReadAsync(given.Overrides)).GetArrayLength().ShouldBe(0);
        (await given.AuditAsync("?kind=override")).ShouldBeEmpty();
    }

    [Fact]
    public async Task Exception_IsNeverMade_ToARuleThatDoesNotSpeakOfTheProperty()
    {
        var given = await Consultancy.OpenAsync(service);
        await given.PutPackAsync(HousePack.Text()
            .Replace("scope: { practices: [tie-down] }", "scope: { practices: [tie-down], states: [PA] }"));

        var problem = await given.Consultant.RefusedAsync(
            HttpMethod.Post, given.Overrides, Form(), HttpStatusCode.UnprocessableEntity);

        problem.Text("detail").ShouldContain("does not speak of this property, which lies in MI, county 26065");
    }

    [Theory]
    [InlineData("house.quiet", null, Reason, "lastDay", "Missing")]
    [InlineData("house.quiet", "2025-02-28", Reason, "lastDay", "from 2025-03-01 to 2026-03-01")]
    [InlineData("house.quiet", "2026-03-02", Reason, "lastDay", "from 2025-03-01 to 2026-03-01")]
    [InlineData("house.quiet", "2025-03-10", null, "reason", "Missing")]
    [InlineData("house.quiet", "2025-03-10", "ok", "reason", "10 to 1000 characters")]
    [InlineData(null, "2025-03-10", Reason, "ruleId", "Missing")]
    public async Task Exception_NeedsRuleExpiryAndReason(
        string? ruleId, string? lastDay, string? reason, string field, string accepted)
    {
        var given = await OpenAsync();

        var problem = await given.Consultant.RefusedAsync(
            HttpMethod.Post, given.Overrides, new Asked(ruleId, null, null, null, lastDay, reason),
            HttpStatusCode.BadRequest);

        problem.Error(field).ShouldContain(accepted);
    }

    [Fact]
    public async Task Exception_LastsAtMost366Days_AndBeginsTodayAtTheEarliest()
    {
        var given = await OpenAsync();

        (await given.Consultant.RefusedAsync(
            HttpMethod.Post, given.Overrides, Form() with { FirstDay = "2025-02-28" }, HttpStatusCode.BadRequest))
            .Error("firstDay").ShouldContain("not before today");
        await given.Consultant.CreateAsync(given.Overrides, Form(lastDay: "2026-03-01"));
    }

    [Fact]
    public async Task Exception_IsRefused_ForAParcelOrTaskOfAnotherProperty()
    {
        var given = await OpenAsync();
        var (_, parcel) = await Land.CreateAsync(given.Consultant, -84.5, 42.6, "26065", "MI");
        var task = (await Land.TaskAsync(given.Consultant, parcel, "tie-down")).Id();

        var problem = await given.Consultant.RefusedAsync(
            HttpMethod.Post, given.Overrides, Form() with { ParcelId = parcel, TaskId = task },
            HttpStatusCode.BadRequest);

        problem.Error("parcelId").ShouldContain("a parcel of the property");
        problem.Error("taskId").ShouldContain("a task of the property");
    }

    [Fact]
    public async Task Exception_IsAConflict_WhenOneIsInForceAlready()
    {
        var given = await OpenAsync();
        await given.Consultant.CreateAsync(given.Overrides, Form());

        (await given.Consultant.RefusedAsync(HttpMethod.Post, given.Overrides, Form(), HttpStatusCode.Conflict))
            .Text("detail").ShouldContain("in force already");
    }

    [Fact]
    public async Task Exception_IsSignedByAConsultant_NeverByAMachineOrACrew()
    {
        var given = await OpenAsync();
        var machine = await service.MachineAsync(given.Organization);
        await service.AddPersonAsync(given.Organization, "lead.override@example.org", Role.CrewLead);
        var (lead, _) = await service.SignInAsync("lead.override@example.org");

        (await machine.RefusedAsync(HttpMethod.Post, given.Overrides, Form(), HttpStatusCode.Forbidden))
            .Text("detail").ShouldContain("no key of a machine");
        await lead.RefusedAsync(HttpMethod.Post, given.Overrides, Form(), HttpStatusCode.Forbidden);
        var made = await given.Consultant.CreateAsync(given.Overrides, Form());
        await machine.RefusedAsync(
            HttpMethod.Delete, $"{given.Overrides}/{made.Id()}", null, HttpStatusCode.Forbidden);
        (await lead.ReadAsync(given.Overrides)).GetArrayLength().ShouldBe(1);
    }

    [Fact]
    public async Task Exception_IsNotFound_ForAnotherOrganization()
    {
        var (given, other) = (await OpenAsync(), await OpenAsync());
        var made = await given.Consultant.CreateAsync(given.Overrides, Form());

        await other.Consultant.RefusedAsync(HttpMethod.Get, given.Overrides, null, HttpStatusCode.NotFound);
        await other.Consultant.RefusedAsync(HttpMethod.Post, given.Overrides, Form(), HttpStatusCode.NotFound);
        await other.Consultant.RefusedAsync(
            HttpMethod.Delete, $"{given.Overrides}/{made.Id()}", null, HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task Decision_KeepsTheExceptionItRestsOn_AndReplays()
    {
        var given = await OpenAsync();
        await given.Consultant.CreateAsync(given.Overrides, Form());
        await Nights.DecideAsync(service, given.Organization, new(2025, 3, 1), new(2025, 3, 31));

        var decisions = await given.Consultant.ReadAsync($"/api/tasks/{given.Task}/decisions");
        var replay = await given.Consultant.ReadAsync($"/api/decisions/{decisions[0].Id()}/replay");

        replay.Text("isSame").ShouldBe("True");
        await using var db = service.Database.Open(given.Organization);
        System.Text.Encoding.UTF8.GetString(db.Decisions.Single().Content).ShouldContain(Reason);
    }

    private async Task<Consultancy> OpenAsync()
    {
        var given = await Consultancy.OpenAsync(service);
        await given.PutPackAsync(HousePack.Text());
        return given;
    }

    private static Asked Form(string ruleId = "house.quiet", string lastDay = "2025-03-20") =>
        new(ruleId, null, null, null, lastDay, Reason);

    private sealed record Asked(
        string? RuleId, Guid? ParcelId, Guid? TaskId, string? FirstDay, string? LastDay, string? Reason);
}
