using System.Net;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Safety.CheckIns;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;
using WorkWindows.Service.Tests.Rules;
using WorkWindows.Service.Tests.Safety.Checklists;

namespace WorkWindows.Service.Tests.Safety.CheckIns;

/// <summary>Watches over the API and by the link of a call. The clock stands at 1 March 2025, noon UTC.</summary>
public sealed class WatchApiTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Watch_RunsFromItsStartToTheEnd()
    {
        var given = await OpenAsync();

        var watch = await given.StartAsync();
        (watch.Text("dueAt"), watch.Text("calledAt")).ShouldBe(("2025-03-01T13:00:00Z", "2025-03-01T13:15:00Z"));
        (watch.Text("day"), watch.Text("startedBy"), watch.Text("mailLeaves")).ShouldBe(("2025-03-01", given.Name, "False"));
        service.Clock.Advance(Duration.FromMinutes(40));
        (await given.Crew.PostOkAsync($"/api/watches/{watch.Id()}/check-ins", new { })).Text("dueAt")
            .ShouldBe("2025-03-01T13:40:00Z");
        await given.Crew.PostOkAsync($"/api/watches/{watch.Id()}/end", new { });
        var ended = await given.Crew.PostOkAsync($"/api/watches/{watch.Id()}/end", new { });

        ended.GetProperty("checkIns").EnumerateArray().Select(one => one.Text("kind")).ShouldBe(["started", "fine", "out"]);
        (await given.Crew.RefusedAsync(
            HttpMethod.Post, $"/api/watches/{watch.Id()}/check-ins", new { }, HttpStatusCode.Conflict))
            .Text("detail").ShouldContain("This watch has ended");
        (await given.Crew.ReadAsync(given.Watches)).GetArrayLength().ShouldBe(1);
        await given.StartAsync();
    }

    [Fact]
    public async Task Start_IsAConflict_WhileAWatchOfTheTaskIsOn()
    {
        var given = await OpenAsync();
        await given.StartAsync();

        (await given.Crew.RefusedAsync(HttpMethod.Post, given.Watches, Form(), HttpStatusCode.Conflict))
            .Text("detail").ShouldContain("is on already");
    }

    [Fact]
    public async Task Start_IsRefused_ForOnePersonAtFelling_WithTheRuleAndItsSource()
    {
        var given = await OpenAsync();

        var problem = await given.Crew.RefusedAsync(
            HttpMethod.Post, given.Watches, Form() with { PeopleOnSite = 1 }, HttpStatusCode.UnprocessableEntity);

        problem.Text("detail").ShouldContain("must not be done alone: Michigan forbids working alone when felling");
        (problem.Text("field"), problem.Text("rule")).ShouldBe(("peopleOnSite", "mi.not-alone"));
        problem.Text("source").ShouldBe("Michigan Administrative Code, logging, 2024, R 408.15113(d) and (f)");
        (await given.Crew.ReadAsync(given.Watches)).GetArrayLength().ShouldBe(0);
    }

    [Fact]
    public async Task Start_LetsOnePersonDoWhatMayBeDoneAlone()
    {
        var given = await OpenAsync("tie-down");

        (await given.StartAsync(people: 1)).Text("peopleOnSite").ShouldBe("1");
    }

    [Theory]
    [InlineData(0, 60, 15, "ada@example.org", "peopleOnSite", "from 1 to 99")]
    [InlineData(2, 4, 15, "ada@example.org", "intervalMinutes", "from 5 to 240")]
    [InlineData(2, 241, 15, "ada@example.org", "intervalMinutes", "from 5 to 240")]
    [InlineData(2, 60, 61, "ada@example.org", "graceMinutes", "from 0 to 60")]
    [InlineData(2, 60, 15, "ada", "contacts[0].email", "a mail address such as")]
    [InlineData(2, 60, 15, null, "contacts", "1 to 10 people")]
    public async Task Start_NamesWhatIsNotAccepted(
        int people, int interval, int grace, string? email, string field, string accepted)
    {
        var given = await OpenAsync();
        Contact[] contacts = email is null ? [] : [new(null, "Ada Birch", email)];

        var problem = await given.Crew.RefusedAsync(
            HttpMethod.Post, given.Watches, new Asked(people, interval, grace, 10, contacts), HttpStatusCode.BadRequest);

        problem.Error(field).ShouldContain(accepted);
    }

    [Fact]
    public async Task Start_NamesAPersonWhoIsNotOfTheOrganization_AndAnAddressThatStandsTwice()
    {
        var given = await OpenAsync();
        Contact[] contacts =
            [new(Guid.NewGuid(), null, null), new(null, "Ada", "ada@example.org"), new(null, "Eda", "ADA@example.org")];

        var problem = await given.Crew.RefusedAsync(
            HttpMethod.Post, given.Watches, Form() with { Contacts = contacts }, HttpStatusCode.BadRequest);

        problem.Error("contacts[0].personId").ShouldContain("a person of the organization");
        problem.Error("contacts[2]").ShouldContain("in the list already");
    }

    [Fact]
    public async Task Watches_AreForTheCrewsOfTheOrganization()
    {
        var (given, other) = (await OpenAsync(), await OpenAsync());
        var watch = await given.StartAsync();
        var landowner = await service.MachineAsync(given.Organization, Role.Landowner);

        await landowner.RefusedAsync(HttpMethod.Post, given.Watches, Form(), HttpStatusCode.Forbidden);
        await other.Crew.RefusedAsync(HttpMethod.Post, given.Watches, Form(), HttpStatusCode.NotFound);
        await other.Crew.RefusedAsync(HttpMethod.Get, $"/api/watches/{watch.Id()}", null, HttpStatusCode.NotFound);
        await other.Crew.RefusedAsync(
            HttpMethod.Post, $"/api/watches/{watch.Id()}/check-ins", new { }, HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task Acknowledgement_NeedsAMissedCheckIn_NamesWhoGaveIt_AndTheFirstStands()
    {
        var given = await OpenAsync();
        var watch = await given.StartAsync();
        var address = $"/api/watches/{watch.Id()}/acknowledgement";
        (await given.Crew.RefusedAsync(HttpMethod.Post, address, new { }, HttpStatusCode.Conflict))
            .Text("detail").ShouldContain("No check-in is missed");

        await MissAsync(given);
        await given.Crew.PostOkAsync(address, new { });
        var machine = await service.MachineAsync(given.Organization, Role.CrewMember);
        var missed = (await machine.PostOkAsync(address, new { })).GetProperty("missed")[0];

        (missed.Text("acknowledgedBy"), missed.Text("acknowledgedAt")).ShouldBe((given.Name, "2025-03-01T13:15:00Z"));
        missed.GetProperty("calls")[0].Text("contact").ShouldBe("Ada Birch");
    }

    [Fact]
    public async Task Page_SaysToCallAContactWhoseMailCameBack()
    {
        var given = await OpenAsync();
        await given.StartAsync();
        await MissAsync(given);
        await using (var db = service.Database.Open(given.Organization))
        {
            var call = await db.Messages.SingleAsync(message => message.Kind == NoticeKinds.MissedCheckIn);
            call.SentAt = service.Clock.GetCurrentInstant();
            call.GiveUp(service.Clock.GetCurrentInstant(), GivenUp.AddressBounces, "came back, status 5.1.1");
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        (await given.Crew.ReadAsync(given.Watches))[0].GetProperty("missed")[0].GetProperty("calls")[0].Text("isLost")
            .ShouldBe("True");
    }

    [Fact]
    public async Task LinkOfACall_ShowsWhoIsMissing_ToSomebodyWithoutAnAccount_AndTakesItOverByName()
    {
        var given = await OpenAsync();
        await given.StartAsync();
        await MissAsync(given);
        var address = await LinkAsync(given);
        var stranger = service.Anonymous();

        (await stranger.GetStringAsync(address)).ShouldContain("I take it over");
        (await StoredAsync(given)).AcknowledgedBy.ShouldBeNull("mail programs open links to check them");
        using var answer = await stranger.PostFormAsync(address, []);

        (await answer.Content.ReadAsStringAsync()).ShouldContain("<b>Ada Birch</b> took it over at Sat 1 Mar 2025, 8:15");
        (await StoredAsync(given)).AcknowledgedBy.ShouldBe("Ada Birch");
    }

    [Fact]
    public async Task LinkOfACall_WorksForSomebodyOfAnotherOrganization_AndSaysWhenTheCrewIsFine()
    {
        var (given, other) = (await OpenAsync(), await OpenAsync());
        var watch = await given.StartAsync();
        await MissAsync(given);
        var address = await LinkAsync(given);
        await given.Crew.PostOkAsync($"/api/watches/{watch.Id()}/check-ins", new { });

        (await other.Crew.GetStringAsync(address)).ShouldContain("The crew was heard from");
    }

    [Theory]
    [InlineData("x")]
    [InlineData("!")]
    [InlineData("AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA")]
    public async Task LinkOfACall_IsNoPage_WithAnotherSignature(string signature)
    {
        var given = await OpenAsync();
        await given.StartAsync();
        await MissAsync(given);
        var address = await LinkAsync(given);

        (await service.Anonymous().GetAsync($"{address[..(address.IndexOf('=') + 1)]}{signature}"))
            .StatusCode.ShouldBe(HttpStatusCode.NotFound);
    }

    private async Task<Given> OpenAsync(string practice = "hinge-cut")
    {
        service.Clock.Reset(Instant.FromUtc(2025, 3, 1, 12, 0));
        var consultancy = await Consultancy.OpenAsync(service);
        var task = (await Land.TaskAsync(consultancy.Consultant, consultancy.Parcel, practice)).Id();
        var name = $"lead.{Guid.NewGuid():N}@example.org";
        await service.AddPersonAsync(consultancy.Organization, name, Role.CrewLead);
        await CalmWeather.AddAsync(consultancy);
        await new GivenChecklist(consultancy, task, consultancy.Consultant, Guid.Empty, name).SignAsync();
        return new(consultancy.Organization, (await service.SignInAsync(name)).Client, name, task);
    }

    /// <summary>Lets the first check-in of a watch pass with its grace.</summary>
    private async Task MissAsync(Given given)
    {
        service.Clock.Reset(Instant.FromUtc(2025, 3, 1, 13, 15));
        await using var scope = service.Services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<WatchRound>().RunAsync(given.Organization, default);
    }

    private async Task<string> LinkAsync(Given given)
    {
        await using var db = service.Database.Open(given.Organization);
        var watch = await new WatchStore(db).All.SingleAsync();
        var call = watch.Missed.Single().Calls.Single();
        return $"/alarms/{given.Organization}/{call.Id}?signature={AlarmLink.Sign(watch, call)}";
    }

    private async Task<MissedCheckIn> StoredAsync(Given given)
    {
        await using var db = service.Database.Open(given.Organization);
        return await db.MissedCheckIns.SingleAsync();
    }

    private static Asked Form() => new(2, null, null, null, [new(null, "Ada Birch", "ada@example.org")]);

    private sealed record Given(Guid Organization, HttpClient Crew, string Name, Guid Task)
    {
        public string Watches => $"/api/tasks/{Task}/watches";

        public Task<JsonElement> StartAsync(int people = 2) => Crew.CreateAsync(Watches, Form() with { PeopleOnSite = people });
    }

    private sealed record Asked(
        int PeopleOnSite, int? IntervalMinutes, int? GraceMinutes, int? EscalationMinutes, Contact[] Contacts);

    private sealed record Contact(Guid? PersonId, string? Name, string? Email);
}
