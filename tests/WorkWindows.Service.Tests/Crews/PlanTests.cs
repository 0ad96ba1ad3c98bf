using System.Net;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;
using Shouldly;
using WorkWindows.Service.Crews;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Safety.Checklists;

namespace WorkWindows.Service.Tests.Crews;

public sealed class PlanTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private static readonly LocalDate Today = new(2025, 3, 1);

    [Fact]
    public async Task Plan_IsToldToNobody_UntilItIsPublished_AndThenTheTaskIsOfItsCrew()
    {
        var given = await GivenCrew.OpenAsync(service);

        var plan = await given.ProposeAsync();
        var before = await given.BookingsAsync();
        await given.Office.Consultant.PostOkAsync($"/api/plans/{plan.Id()}/publication", new { });

        plan.Text("status").ShouldBe("proposed");
        plan.GetProperty("content").GetProperty("differences").EnumerateArray().Select(one => one.GetString())
            .ShouldContain(one => one!.Contains(": new, North, Sat 1 Mar"));
        before.ShouldBeEmpty();
        var booking = (await given.BookingsAsync()).First(row => row.GetProperty("taskId").GetGuid() == given.Task);
        booking.GetProperty("personIds").GetArrayLength().ShouldBe(2);
        var task = await given.Office.Consultant.ReadAsync($"/api/tasks/{given.Task}");
        (task.Text("scheduledOn"), task.GetProperty("crewLeadId").GetGuid()).ShouldBe((booking.Text("day"), given.LeadId));
    }

    [Fact]
    public async Task Plan_IsPublishedOnce_AndKeptWhenItIsDiscarded()
    {
        var given = await GivenCrew.OpenAsync(service);
        var (published, discarded) = (await given.ProposeAsync(), await given.ProposeAsync());

        await given.Office.Consultant.PostOkAsync($"/api/plans/{published.Id()}/publication", new { });
        await given.Office.Consultant.DeleteAsync(new Uri($"/api/plans/{discarded.Id()}", UriKind.Relative), TestContext.Current.CancellationToken);

        await given.Office.Consultant.RefusedAsync(
            HttpMethod.Post, $"/api/plans/{published.Id()}/publication", new { }, HttpStatusCode.Conflict);
        await given.Office.Consultant.RefusedAsync(
            HttpMethod.Post, $"/api/plans/{discarded.Id()}/publication", new { }, HttpStatusCode.Conflict);
        (await given.Office.Consultant.ReadAsync($"/api/plans/{discarded.Id()}")).Text("status").ShouldBe("discarded");
        (await given.Office.Consultant.ReadAsync("/api/plans")).EnumerateArray().Select(plan => plan.Text("status"))
            .ShouldBe(["discarded", "published"], ignoreOrder: true);
    }

    [Fact]
    public async Task Plan_ThatIsPublishedAgain_ChangesNothing()
    {
        var given = await GivenCrew.OpenAsync(service);
        await given.Office.Consultant.PostOkAsync($"/api/plans/{(await given.ProposeAsync()).Id()}/publication", new { });
        var before = await given.BookingsAsync();

        var again = await given.ProposeAsync();
        await given.Office.Consultant.PostOkAsync($"/api/plans/{again.Id()}/publication", new { });

        again.GetProperty("content").GetProperty("differences").GetArrayLength().ShouldBe(0);
        (await given.BookingsAsync()).Select(row => row.Id()).ShouldBe(before.Select(row => row.Id()));
    }

    [Fact]
    public async Task Plan_ThatIsNotTrueAnyMore_IsNotPublished()
    {
        var given = await GivenCrew.OpenAsync(service);
        var plan = await given.ProposeAsync();
        await given.Office.Consultant.CreateAsync("/api/absences", new { crewId = given.Crew, firstDay = "2025-03-01", lastDay = "2025-04-01" });

        var problem = await given.Office.Consultant.RefusedAsync(
            HttpMethod.Post, $"/api/plans/{plan.Id()}/publication", new { }, HttpStatusCode.Conflict);

        problem.Text("detail").ShouldContain("North is off on Sat 1 Mar.");
        (await given.BookingsAsync()).ShouldBeEmpty();
    }

    [Fact]
    public async Task Work_FinishedEarly_FreesItsCrew()
    {
        var given = await GivenCrew.OpenAsync(service);
        await given.Office.Consultant.PostOkAsync($"/api/plans/{(await given.ProposeAsync()).Id()}/publication", new { });
        var booked = (await given.BookingsAsync()).Single(IsOfTask).Text("day");

        await given.Checklist.Lead.PostOkAsync($"/api/tasks/{given.Task}/work", new
        {
            id = Guid.NewGuid(),
            day = $"{LocalDatePattern.Iso.Parse(booked).Value.PlusDays(-1):R}",
            people = 2,
            hours = 6,
            isLast = true,
        });

        (await given.BookingsAsync()).Where(IsOfTask).ShouldBeEmpty();

        bool IsOfTask(JsonElement row) => row.GetProperty("taskId").GetGuid() == given.Task;
    }

    [Fact]
    public async Task Plan_LeavesWhatFollowsAHingeCut_ToLaterYears()
    {
        var given = await GivenCrew.OpenAsync(service);
        var parcel = (await given.Office.Consultant.ReadAsync($"/api/tasks/{given.Task}")).GetProperty("parcelId").GetGuid();
        var follow = await given.Office.Consultant.CreateAsync("/api/tasks", new
        {
            key = $"{Guid.NewGuid():N}",
            parcelId = parcel,
            practice = "tie-down",
            crewSize = 2,
            followsId = given.Task,
            prerequisiteIds = new[] { given.Task },
        });

        var content = (await given.Office.Consultant.CreateAsync("/api/plans", new { days = 60 })).GetProperty("content");

        content.GetProperty("bookings").EnumerateArray().ShouldNotContain(row => row.Text("taskId") == $"{follow.Id()}");
        content.GetProperty("leftOut").EnumerateArray().Single(row => row.Text("taskId") == $"{follow.Id()}").Text("says")
            .ShouldContain("2026-03-01, its first day");
    }

    [Fact]
    public async Task Plan_ReachesToTheLastBookedDay_SoThatNothingIsPlannedTwice()
    {
        var given = await GivenCrew.OpenAsync(service);
        await given.BookAsync(given.Task, given.Crew, "2025-03-08");

        var content = (await given.ProposeAsync()).GetProperty("content");

        content.GetProperty("bookings").EnumerateArray().Single(row => row.Text("taskId") == $"{given.Task}").Text("day").ShouldBe("2025-03-08");
    }

    [Fact]
    public async Task Plan_IsStoredWithTheDayFirst_AndShownAsTheRegionOfItsReaderWritesDays()
    {
        var given = await GivenCrew.OpenAsync(service);
        var (consultant, _) = await given.Checklist.AddAsync(Service.Accounts.Role.Consultant);
        consultant.DefaultRequestHeaders.AcceptLanguage.ParseAdd("en-US");

        var plan = await consultant.CreateAsync("/api/plans", new { days = 5 });

        plan.GetProperty("content").GetRawText().ShouldContain("North, Sat 1 Mar");
        (await consultant.GetStringAsync("/plan", TestContext.Current.CancellationToken)).ShouldContain("North, Sat Mar 1");
        (await given.Office.Consultant.ReadAsync($"/api/plans/{plan.Id()}")).GetRawText().ShouldContain("North, Sat 1 Mar");
    }

    [Fact]
    public async Task Plan_SaysWhatStandsAgainstWork_ThatWasSetByHand()
    {
        var given = await GivenCrew.OpenAsync(service);
        await given.BookAsync(given.Task, given.Crew, "2025-03-01", 2);
        await given.Office.Consultant.CreateAsync("/api/absences", new { crewId = given.Crew, firstDay = "2025-03-01", lastDay = "2025-03-01" });

        var content = (await given.ProposeAsync()).GetProperty("content");

        content.GetProperty("troubles").EnumerateArray().Select(one => one.GetString()).ShouldContain("North is off on Sat 1 Mar.");
    }

    [Fact]
    public async Task Board_SaysWhoIsOff_OnADayThatIsBooked()
    {
        var given = await GivenCrew.OpenAsync(service);
        await given.Office.Consultant.PostOkAsync($"/api/plans/{(await given.ProposeAsync()).Id()}/publication", new { });
        var booked = (await given.BookingsAsync())[0].Text("day");
        var (consultant, _) = await given.Checklist.AddAsync(Service.Accounts.Role.Consultant);

        await given.Office.Consultant.CreateAsync(
            "/api/absences", new { personId = given.LeadId, firstDay = booked, reason = "ill" });

        var board = await consultant.GetStringAsync($"/board?from={booked}", TestContext.Current.CancellationToken);
        WebUtility.HtmlDecode(board).ShouldContain($"Off on this day: {given.Checklist.LeadName}.");
    }

    [Fact]
    public async Task Board_SaysWhatComesFirst_WhereItIsNeitherDoneNorBookedBefore()
    {
        var given = await GivenCrew.OpenAsync(service);
        var client = given.Office.Consultant;
        await client.CreateAsync("/api/bookings", new { taskId = given.Task, crewId = given.Crew, day = "2025-03-02", hours = 2 });
        var (consultant, _) = await given.Checklist.AddAsync(Service.Accounts.Role.Consultant);
        var task = await client.ReadAsync($"/api/tasks/{given.Task}");
        var first = await client.CreateAsync("/api/tasks", new
        {
            key = $"{Guid.NewGuid():N}",
            parcelId = task.GetProperty("parcelId").GetGuid(),
            practice = "trail-opening",
            crewSize = 2,
        });
        await client.PutAsync($"/api/tasks/{given.Task}", new
        {
            parcelId = task.GetProperty("parcelId").GetGuid(),
            practice = task.Text("practice"),
            crewSize = 2,
            prerequisiteIds = new[] { first.Id() },
        });

        var waiting = await BoardAsync();
        await client.PutAsync($"/api/tasks/{first.Id()}/completion", new { completedOn = "2025-03-01" });

        waiting.ShouldContain("Trail opening comes first: it is neither done nor booked before.");
        (await BoardAsync()).ShouldNotContain("comes first");

        async Task<string> BoardAsync() => WebUtility.HtmlDecode(
            await consultant.GetStringAsync("/board?from=2025-03-01", TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Certificates_AreAddedRenewedAndDeleted_OnTheCrewsPage()
    {
        var given = await GivenCrew.OpenAsync(service);
        var (consultant, _) = await given.Checklist.AddAsync(Service.Accounts.Role.Consultant);

        await PostAsync("/crews?handler=Certificate", new() { ["holder"] = $"{given.LeadId}", ["title"] = "First aid", ["validUntil"] = "2025-02-01" });
        var late = await PageAsync();
        await PostAsync("/crews?handler=Certificate", new() { ["holder"] = $"{given.LeadId}", ["title"] = "First aid", ["validUntil"] = "2027-02-01" });
        var renewed = await PageAsync();
        var refused = await PostAsync("/crews?handler=Certificate", new() { ["holder"] = $"{given.LeadId}", ["title"] = "Winch" });
        await PostAsync($"/crews?handler=DeleteCertificate&id={given.LeadId}&title=First%20aid", []);

        late.ShouldContain("First aid, ran out Sat 1 Feb 2025");
        renewed.ShouldContain("First aid, valid until Mon 1 Feb 2027");
        renewed.ShouldNotContain("ran out");
        refused.ShouldContain("the last day on which it is valid");
        (await PageAsync()).ShouldNotContain("First aid, valid");

        async Task<string> PostAsync(string page, Dictionary<string, string> form)
        {
            using var answer = await consultant.PostFormAsync(page, form);
            return WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        }

        async Task<string> PageAsync() =>
            WebUtility.HtmlDecode(await consultant.GetStringAsync("/crews", TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task CrewCalendar_ShowsPublishedDays_ToWhoeverHasItsAddress()
    {
        var given = await GivenCrew.OpenAsync(service);
        await given.Office.Consultant.PostOkAsync($"/api/plans/{(await given.ProposeAsync()).Id()}/publication", new { });
        var (consultant, _) = await given.Checklist.AddAsync(Service.Accounts.Role.Consultant);

        var page = await (await consultant.PostFormAsync($"/crews?handler=Calendar&id={given.Crew}", [])).Content
            .ReadAsStringAsync(TestContext.Current.CancellationToken);
        var address = System.Text.RegularExpressions.Regex.Match(page, @"/calendars/[0-9a-f-]+/crew\.ics\?key=[\w-]+").Value;
        var text = await service.Anonymous().GetStringAsync(address, TestContext.Current.CancellationToken);
        var stranger = await service.Anonymous().GetAsync(address + "x", TestContext.Current.CancellationToken);

        Ical.Net.Calendar.Load(text)!.Events.First().Start!.Value.ShouldBe(new DateTime(2025, 3, 1, 8, 0, 0));
        text.ShouldContain($"UID:{given.Task:N}-{given.Crew:N}-0@");
        stranger.StatusCode.ShouldBe(HttpStatusCode.NotFound);
    }

    [Theory]
    [InlineData("/board")]
    [InlineData("/board/season")]
    [InlineData("/board/print")]
    public async Task Pages_ShowACrewMemberTheWork_AndNoLandowner(string page)
    {
        var given = await GivenCrew.OpenAsync(service);
        await given.Office.Consultant.PostOkAsync($"/api/plans/{(await given.ProposeAsync()).Id()}/publication", new { });
        var (member, _) = await given.Checklist.AddAsync(Service.Accounts.Role.CrewMember);
        var (owner, _) = await given.Checklist.AddAsync(Service.Accounts.Role.Landowner);

        (await member.GetStringAsync($"{page}?from=2025-03-01", TestContext.Current.CancellationToken)).ShouldContain("North");
        (await owner.GetAsync(new Uri(page, UriKind.Relative), TestContext.Current.CancellationToken)).StatusCode
            .ShouldBe(HttpStatusCode.Forbidden);
    }
}
