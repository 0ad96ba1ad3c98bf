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
    private static readonly string[] Winch = ["winch"];
    private static readonly LocalDate Today = new(2025, 3, 1);

    [Fact]
    public async Task Plan_IsToldToNobody_UntilItIsPublished_AndThenTheTaskIsOfItsCrew()
    {
        var given = await GivenAsync();

        var plan = await ProposeAsync(given);
        var before = await BookingsAsync(given);
        await given.Office.Consultant.PostOkAsync($"/api/plans/{plan.Id()}/publication", new { });

        plan.Text("status").ShouldBe("proposed");
        plan.GetProperty("content").GetProperty("differences").EnumerateArray().Select(one => one.GetString())
            .ShouldContain(one => one!.Contains(": new, North, Sat 1 Mar"));
        before.ShouldBeEmpty();
        var booking = (await BookingsAsync(given)).First(row => row.GetProperty("taskId").GetGuid() == given.Task);
        booking.GetProperty("personIds").GetArrayLength().ShouldBe(2);
        var task = await given.Office.Consultant.ReadAsync($"/api/tasks/{given.Task}");
        (task.Text("scheduledOn"), task.GetProperty("crewLeadId").GetGuid()).ShouldBe((booking.Text("day"), given.LeadId));
    }

    [Fact]
    public async Task Plan_IsPublishedOnce_AndKeptWhenItIsDiscarded()
    {
        var given = await GivenAsync();
        var (published, discarded) = (await ProposeAsync(given), await ProposeAsync(given));

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
        var given = await GivenAsync();
        await given.Office.Consultant.PostOkAsync($"/api/plans/{(await ProposeAsync(given)).Id()}/publication", new { });
        var before = await BookingsAsync(given);

        var again = await ProposeAsync(given);
        await given.Office.Consultant.PostOkAsync($"/api/plans/{again.Id()}/publication", new { });

        again.GetProperty("content").GetProperty("differences").GetArrayLength().ShouldBe(0);
        (await BookingsAsync(given)).Select(row => row.Id()).ShouldBe(before.Select(row => row.Id()));
    }

    [Fact]
    public async Task Plan_ThatIsNotTrueAnyMore_IsNotPublished()
    {
        var given = await GivenAsync();
        var plan = await ProposeAsync(given);
        await given.Office.Consultant.CreateAsync("/api/absences", new { crewId = given.Crew, firstDay = "2025-03-01", lastDay = "2025-04-01" });

        var problem = await given.Office.Consultant.RefusedAsync(
            HttpMethod.Post, $"/api/plans/{plan.Id()}/publication", new { }, HttpStatusCode.Conflict);

        problem.Text("detail").ShouldContain("North is off on Sat 1 Mar.");
        (await BookingsAsync(given)).ShouldBeEmpty();
    }

    [Theory]
    [InlineData("2025-06-20", "the day is closed or not known")]
    [InlineData("2025-03-01", "North has too few people on Sat 1 Mar")]
    public async Task Booking_ByHand_SaysAtOnceWhatStandsAgainstIt(string day, string says)
    {
        var given = await GivenAsync();
        if (day == "2025-03-01")
            await given.Office.Consultant.CreateAsync("/api/absences", new { personId = given.LeadId, firstDay = day });

        var problem = await given.Office.Consultant.RefusedAsync(
            HttpMethod.Post, "/api/bookings", new { taskId = given.Task, crewId = given.Crew, day }, HttpStatusCode.Conflict);

        problem.GetProperty("conflicts").EnumerateArray().Select(one => one.GetString()).ShouldContain(one => one!.Contains(says));
        (await BookingsAsync(given)).ShouldBeEmpty();
    }

    [Fact]
    public async Task Booking_ByHand_StaysInTheNextPlan_AndMovesWithItsTask()
    {
        var given = await GivenAsync();
        var booking = await given.Office.Consultant.CreateAsync(
            "/api/bookings", new { taskId = given.Task, crewId = given.Crew, day = "2025-03-01", hours = 2 });

        await given.Office.Consultant.PostOkAsync($"/api/plans/{(await ProposeAsync(given)).Id()}/publication", new { });
        var kept = (await BookingsAsync(given)).Single(row => row.GetProperty("isFixed").GetBoolean());
        var moved = await given.Office.Consultant.RefusedAsync(
            HttpMethod.Post, $"/api/bookings/{kept.Id()}/move", new { crewId = given.Crew, day = "2025-02-27" }, HttpStatusCode.BadRequest);
        await given.Office.Consultant.DeleteAsync(new Uri($"/api/bookings/{kept.Id()}", UriKind.Relative), TestContext.Current.CancellationToken);

        (kept.Id(), kept.Text("day")).ShouldBe((booking.Id(), "2025-03-01"));
        moved.Error("day").ShouldContain("a day from 2025-03-01");
        (await BookingsAsync(given)).ShouldNotContain(row => row.GetProperty("isFixed").GetBoolean());
    }

    [Fact]
    public async Task Work_FinishedEarly_FreesItsCrew()
    {
        var given = await GivenAsync();
        await given.Office.Consultant.PostOkAsync($"/api/plans/{(await ProposeAsync(given)).Id()}/publication", new { });
        var booked = (await BookingsAsync(given)).Single(IsOfTask).Text("day");

        await given.Checklist.Lead.PostOkAsync($"/api/tasks/{given.Task}/work", new
        {
            id = Guid.NewGuid(),
            day = $"{LocalDatePattern.Iso.Parse(booked).Value.PlusDays(-1):R}",
            people = 2,
            hours = 6,
            isLast = true,
        });

        (await BookingsAsync(given)).Where(IsOfTask).ShouldBeEmpty();

        bool IsOfTask(JsonElement row) => row.GetProperty("taskId").GetGuid() == given.Task;
    }

    [Fact]
    public async Task Booking_TakesACrewTheHours_ThatItsOwnRecordsSay()
    {
        var given = await GivenAsync();
        var (_, lead) = await given.Checklist.AddAsync(Service.Accounts.Role.CrewLead);
        var (_, member) = await given.Checklist.AddAsync(Service.Accounts.Role.CrewMember);
        var south = await given.Office.Consultant.CreateAsync("/api/crews", new { name = "South", leadId = lead, memberIds = new[] { member } });
        var task = await given.Office.Consultant.ReadAsync($"/api/tasks/{given.Task}");
        await BookAsync(given.Task, given.Crew);
        await given.Checklist.Lead.PostOkAsync(
            $"/api/tasks/{given.Task}/work", new { id = Guid.NewGuid(), day = "2025-03-01", people = 2, hours = 4, isLast = true });
        var next = await given.Office.Consultant.CreateAsync("/api/tasks", new
        {
            parcelId = task.GetProperty("parcelId").GetGuid(),
            practice = task.Text("practice"),
            key = $"{Guid.NewGuid():N}",
            crewSize = 2,
        });

        var byNorth = await BookAsync(next.Id(), given.Crew);
        var bySouth = await given.Office.Consultant.PostOkAsync(
            $"/api/bookings/{byNorth.Id()}/move", new { crewId = south.Id(), day = "2025-03-01" });

        // A day of two people was assumed and half of it taken: as one job of four that count, once for all and once for North.
        var (usual, own) = (Math.Pow(0.5, 0.25), Math.Pow(0.5, 0.75 * 0.25));
        bySouth.GetProperty("hours").GetDouble().ShouldBe(8 * usual, 0.02);
        byNorth.GetProperty("hours").GetDouble().ShouldBe(8 * usual * own, 0.02);
        (await given.Office.Consultant.GetStringAsync("/crews", TestContext.Current.CancellationToken))
            .ShouldContain("0.88 times the usual hours, by 1 job of its own");

        Task<JsonElement> BookAsync(Guid booked, Guid crew) => given.Office.Consultant.CreateAsync(
            "/api/bookings", new { taskId = booked, crewId = crew, day = "2025-03-01" });
    }

    [Fact]
    public async Task Plan_LeavesWhatFollowsAHingeCut_ToLaterYears()
    {
        var given = await GivenAsync();
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
        var given = await GivenAsync();
        await given.Office.Consultant.CreateAsync("/api/bookings", new { taskId = given.Task, crewId = given.Crew, day = "2025-03-08" });

        var content = (await ProposeAsync(given)).GetProperty("content");

        content.GetProperty("bookings").EnumerateArray().Single(row => row.Text("taskId") == $"{given.Task}").Text("day").ShouldBe("2025-03-08");
    }

    [Fact]
    public async Task Plan_SaysWhatStandsAgainstWork_ThatWasSetByHand()
    {
        var given = await GivenAsync();
        await given.Office.Consultant.CreateAsync("/api/bookings", new { taskId = given.Task, crewId = given.Crew, day = "2025-03-01", hours = 2 });
        await given.Office.Consultant.CreateAsync("/api/absences", new { crewId = given.Crew, firstDay = "2025-03-01", lastDay = "2025-03-01" });

        var content = (await ProposeAsync(given)).GetProperty("content");

        content.GetProperty("troubles").EnumerateArray().Select(one => one.GetString()).ShouldContain("North is off on Sat 1 Mar.");
    }

    [Fact]
    public async Task Booking_MovedToAnotherCrewOnItsDay_TakesThatCrewsEquipment_AndWhatIsLeftOfItsDay()
    {
        var given = await GivenAsync();
        var (_, lead) = await given.Checklist.AddAsync(Service.Accounts.Role.CrewLead);
        var (_, member) = await given.Checklist.AddAsync(Service.Accounts.Role.CrewMember);
        var south = await given.Office.Consultant.CreateAsync("/api/crews", new { name = "South", leadId = lead, memberIds = new[] { member } });
        foreach (var crew in new[] { given.Crew, south.Id() })
            await given.Office.Consultant.CreateAsync("/api/equipment", new { name = $"Winch {crew}", kind = "winch", crewId = crew });
        await given.Office.Consultant.PutAsync(
            "/api/weights", new { practices = new[] { new { practice = "hinge-cut", equipmentKinds = Winch } } });
        var booked = await given.Office.Consultant.CreateAsync(
            "/api/bookings", new { taskId = given.Task, crewId = given.Crew, day = "2025-03-01", hours = 3 });

        var moved = await given.Office.Consultant.PostOkAsync(
            $"/api/bookings/{booked.Id()}/move", new { crewId = south.Id(), day = "2025-03-01" });

        moved.GetProperty("equipmentIds").GetArrayLength().ShouldBe(1);
        var parcel = (await given.Office.Consultant.ReadAsync($"/api/tasks/{given.Task}")).GetProperty("parcelId").GetGuid();
        var second = await given.Office.Consultant.CreateAsync(
            "/api/tasks", new { key = $"{Guid.NewGuid():N}", parcelId = parcel, practice = "tie-down", crewSize = 2 });
        var beside = await given.Office.Consultant.CreateAsync(
            "/api/bookings", new { taskId = second.Id(), crewId = south.Id(), day = "2025-03-01" });
        beside.GetProperty("hours").GetDouble().ShouldBe(5, 0.01);
    }

    [Fact]
    public async Task Board_BooksAFurtherDay_ForWhatIsLeftOfTheWork()
    {
        var given = await GivenAsync();
        await given.Office.Consultant.CreateAsync(
            "/api/bookings", new { taskId = given.Task, crewId = given.Crew, day = "2025-03-01", hours = 5 });
        var (consultant, _) = await given.Checklist.AddAsync(Service.Accounts.Role.Consultant);
        (await consultant.GetStringAsync("/board?from=2025-03-01", TestContext.Current.CancellationToken)).ShouldContain("Book this day too");

        using var answer = await consultant.PostFormAsync(
            $"/board?from=2025-03-01&id={given.Task}&handler=Add", new() { ["day"] = "2025-03-02", ["to"] = $"{given.Crew}" });

        // A day of two people is assumed: 8 hours, 5 of which are booked.
        (await BookingsAsync(given)).Select(row => (row.Text("day"), row.GetProperty("hours").GetDouble()))
            .ShouldBe([("2025-03-01", 5), ("2025-03-02", 3)], ignoreOrder: true);
    }

    [Fact]
    public async Task Work_RecordedToday_DoesNotShortenWhatIsBookedLater()
    {
        var given = await GivenAsync();
        var first = await BookAsync("2025-03-01", 4);
        var later = await BookAsync("2025-03-02", 4);
        await given.Checklist.Lead.PostOkAsync(
            $"/api/tasks/{given.Task}/work", new { id = Guid.NewGuid(), day = "2025-03-01", people = 2, hours = 4 });

        var moved = await given.Office.Consultant.PostOkAsync($"/api/bookings/{later.Id()}/move", new { crewId = given.Crew, day = "2025-03-03" });

        (moved.Text("day"), moved.GetProperty("hours").GetDouble()).ShouldBe(("2025-03-03", 4));
        first.Text("day").ShouldBe("2025-03-01");

        Task<JsonElement> BookAsync(string day, double hours) => given.Office.Consultant.CreateAsync(
            "/api/bookings", new { taskId = given.Task, crewId = given.Crew, day, hours });
    }

    [Fact]
    public async Task Board_SaysWhoIsOff_OnADayThatIsBooked()
    {
        var given = await GivenAsync();
        await given.Office.Consultant.PostOkAsync($"/api/plans/{(await ProposeAsync(given)).Id()}/publication", new { });
        var booked = (await BookingsAsync(given))[0].Text("day");
        var (consultant, _) = await given.Checklist.AddAsync(Service.Accounts.Role.Consultant);

        await given.Office.Consultant.CreateAsync(
            "/api/absences", new { personId = given.LeadId, firstDay = booked, reason = "ill" });

        var board = await consultant.GetStringAsync($"/board?from={booked}", TestContext.Current.CancellationToken);
        WebUtility.HtmlDecode(board).ShouldContain($"Off on this day: {given.Checklist.LeadName}.");
    }

    [Fact]
    public async Task Board_SaysWhatComesFirst_WhereItIsNeitherDoneNorBookedBefore()
    {
        var given = await GivenAsync();
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
        var given = await GivenAsync();
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
        var given = await GivenAsync();
        await given.Office.Consultant.PostOkAsync($"/api/plans/{(await ProposeAsync(given)).Id()}/publication", new { });
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
        var given = await GivenAsync();
        await given.Office.Consultant.PostOkAsync($"/api/plans/{(await ProposeAsync(given)).Id()}/publication", new { });
        var (member, _) = await given.Checklist.AddAsync(Service.Accounts.Role.CrewMember);
        var (owner, _) = await given.Checklist.AddAsync(Service.Accounts.Role.Landowner);

        (await member.GetStringAsync($"{page}?from=2025-03-01", TestContext.Current.CancellationToken)).ShouldContain("North");
        (await owner.GetAsync(new Uri(page, UriKind.Relative), TestContext.Current.CancellationToken)).StatusCode
            .ShouldBe(HttpStatusCode.Forbidden);
    }

    private static Task<JsonElement> ProposeAsync(Given given) =>
        given.Office.Consultant.CreateAsync("/api/plans", new { days = 5 });

    private static async Task<JsonElement[]> BookingsAsync(Given given) =>
        [.. (await given.Office.Consultant.ReadAsync("/api/bookings?from=2025-03-01&to=2025-12-31")).EnumerateArray()];

    private async Task<Given> GivenAsync()
    {
        var checklist = await GivenChecklist.OpenAsync(service);
        var (_, member) = await checklist.AddAsync(Service.Accounts.Role.CrewMember);
        var crew = await checklist.Office.Consultant.CreateAsync(
            "/api/crews", new { name = "North", leadId = checklist.LeadId, memberIds = new[] { member } });
        return new(checklist, crew.Id());
    }

    private sealed record Given(GivenChecklist Checklist, Guid Crew)
    {
        public WorkWindows.Service.Tests.Rules.Consultancy Office => Checklist.Office;
        public Guid Task => Checklist.Task;
        public Guid LeadId => Checklist.LeadId;
    }
}
