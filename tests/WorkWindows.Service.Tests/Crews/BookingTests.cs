using System.Net;
using Shouldly;
using WorkWindows.Service.Tests.Hosting;

namespace WorkWindows.Service.Tests.Crews;

/// <summary>Work that is put on crews' days by hand.</summary>
public sealed class BookingTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private static readonly string[] Winch = ["winch"];

    [Theory]
    [InlineData("2025-06-20", "the day is closed or not known")]
    [InlineData("2025-03-01", "North has too few people on Sat 1 Mar")]
    public async Task Booking_ByHand_SaysAtOnceWhatStandsAgainstIt(string day, string says)
    {
        var given = await GivenCrew.OpenAsync(service);
        if (day == "2025-03-01")
            await given.Office.Consultant.CreateAsync("/api/absences", new { personId = given.LeadId, firstDay = day });

        var problem = await given.Office.Consultant.RefusedAsync(
            HttpMethod.Post, "/api/bookings", new { taskId = given.Task, crewId = given.Crew, day }, HttpStatusCode.Conflict);

        problem.GetProperty("conflicts").EnumerateArray().Select(one => one.GetString()).ShouldContain(one => one!.Contains(says));
        (await given.BookingsAsync()).ShouldBeEmpty();
    }

    [Fact]
    public async Task Booking_ByHand_StaysInTheNextPlan_AndMovesWithItsTask()
    {
        var given = await GivenCrew.OpenAsync(service);
        var booking = await given.BookAsync(given.Task, given.Crew, "2025-03-01", 2);

        await given.Office.Consultant.PostOkAsync($"/api/plans/{(await given.ProposeAsync()).Id()}/publication", new { });
        var kept = (await given.BookingsAsync()).Single(row => row.GetProperty("isFixed").GetBoolean());
        var moved = await given.Office.Consultant.RefusedAsync(
            HttpMethod.Post, $"/api/bookings/{kept.Id()}/move", new { crewId = given.Crew, day = "2025-02-27" }, HttpStatusCode.BadRequest);
        await given.Office.Consultant.DeleteAsync(new Uri($"/api/bookings/{kept.Id()}", UriKind.Relative), TestContext.Current.CancellationToken);

        (kept.Id(), kept.Text("day")).ShouldBe((booking.Id(), "2025-03-01"));
        moved.Error("day").ShouldContain("a day from 2025-03-01");
        (await given.BookingsAsync()).ShouldNotContain(row => row.GetProperty("isFixed").GetBoolean());
    }

    [Fact]
    public async Task Booking_TakesACrewTheHours_ThatItsOwnRecordsSay()
    {
        var given = await GivenCrew.OpenAsync(service);
        var south = await given.AddSouthAsync();
        await given.BookAsync(given.Task, given.Crew, "2025-03-01");
        await given.Checklist.Lead.PostOkAsync(
            $"/api/tasks/{given.Task}/work", new { id = Guid.NewGuid(), day = "2025-03-01", people = 2, hours = 4, isLast = true });
        var next = await given.AddTaskAsync("hinge-cut");

        var byNorth = await given.BookAsync(next.Id(), given.Crew, "2025-03-01");
        var bySouth = await given.Office.Consultant.PostOkAsync(
            $"/api/bookings/{byNorth.Id()}/move", new { crewId = south, day = "2025-03-01" });

        // A day of two people was assumed and half of it taken: as one job of four that count, once for all and once for North.
        var (usual, own) = (Math.Pow(0.5, 0.25), Math.Pow(0.5, 0.75 * 0.25));
        bySouth.GetProperty("hours").GetDouble().ShouldBe(8 * usual, 0.02);
        byNorth.GetProperty("hours").GetDouble().ShouldBe(8 * usual * own, 0.02);
        (await given.Office.Consultant.GetStringAsync("/crews", TestContext.Current.CancellationToken))
            .ShouldContain("0.88 times the usual hours, by 1 job of its own");
    }

    [Fact]
    public async Task Booking_MovedToAnotherCrewOnItsDay_TakesThatCrewsEquipment_AndWhatIsLeftOfItsDay()
    {
        var given = await GivenCrew.OpenAsync(service);
        var south = await given.AddSouthAsync();
        foreach (var crew in new[] { given.Crew, south })
            await given.Office.Consultant.CreateAsync("/api/equipment", new { name = $"Winch {crew}", kind = "winch", crewId = crew });
        await given.Office.Consultant.PutAsync(
            "/api/weights", new { practices = new[] { new { practice = "hinge-cut", equipmentKinds = Winch } } });
        var booked = await given.BookAsync(given.Task, given.Crew, "2025-03-01", 3);

        var moved = await given.Office.Consultant.PostOkAsync(
            $"/api/bookings/{booked.Id()}/move", new { crewId = south, day = "2025-03-01" });

        moved.GetProperty("equipmentIds").GetArrayLength().ShouldBe(1);
        var beside = await given.BookAsync((await given.AddTaskAsync("tie-down")).Id(), south, "2025-03-01");
        beside.GetProperty("hours").GetDouble().ShouldBe(5, 0.01);
    }

    [Fact]
    public async Task Board_BooksAFurtherDay_ForWhatIsLeftOfTheWork()
    {
        var given = await GivenCrew.OpenAsync(service);
        await given.BookAsync(given.Task, given.Crew, "2025-03-01", 5);
        var (consultant, _) = await given.Checklist.AddAsync(Service.Accounts.Role.Consultant);
        (await consultant.GetStringAsync("/board?from=2025-03-01", TestContext.Current.CancellationToken)).ShouldContain("Book this day too");

        using var answer = await consultant.PostFormAsync(
            $"/board?from=2025-03-01&id={given.Task}&handler=Add", new() { ["day"] = "2025-03-02", ["to"] = $"{given.Crew}" });

        // A day of two people is assumed: 8 hours, 5 of which are booked.
        (await given.BookingsAsync()).Select(row => (row.Text("day"), row.GetProperty("hours").GetDouble()))
            .ShouldBe([("2025-03-01", 5), ("2025-03-02", 3)], ignoreOrder: true);
    }

    [Fact]
    public async Task Work_RecordedToday_DoesNotShortenWhatIsBookedLater()
    {
        var given = await GivenCrew.OpenAsync(service);
        var first = await given.BookAsync(given.Task, given.Crew, "2025-03-01", 4);
        var later = await given.BookAsync(given.Task, given.Crew, "2025-03-02", 4);
        await given.Checklist.Lead.PostOkAsync(
            $"/api/tasks/{given.Task}/work", new { id = Guid.NewGuid(), day = "2025-03-01", people = 2, hours = 4 });

        var moved = await given.Office.Consultant.PostOkAsync($"/api/bookings/{later.Id()}/move", new { crewId = given.Crew, day = "2025-03-03" });

        (moved.Text("day"), moved.GetProperty("hours").GetDouble()).ShouldBe(("2025-03-03", 4));
        first.Text("day").ShouldBe("2025-03-01");
    }
}
