using System.Net;
using System.Net.Http.Headers;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Safety.Checklists;

namespace WorkWindows.Service.Tests.WorkDone;

public sealed class WorkTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private static readonly string[] Following = ["tie-down", "re-cut"];

    [Fact]
    public async Task Record_HandedInTwice_IsStoredOnce()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var record = new { id = Guid.NewGuid(), day = "2025-03-01", people = 2, hours = 3.5, stems = 40, problem = "a hung stem" };

        await given.Lead.PostOkAsync(Address(given), record);
        await given.Lead.PostOkAsync(Address(given), record);

        var stored = (await given.Lead.ReadAsync(Address(given))).EnumerateArray().Single();
        (stored.GetProperty("personHours").GetDecimal(), stored.Text("recordedBy"), stored.Text("problem")).ShouldBe((7, given.LeadName, "a hung stem"));
    }

    [Fact]
    public async Task Record_NamesEveryFaultAtOnce_AndStoresNothing()
    {
        var given = await GivenChecklist.OpenAsync(service);

        var problem = await given.Lead.RefusedAsync(HttpMethod.Post, Address(given),
            new { day = "2025-03-02", people = 0, hours = 25, stems = -1 }, HttpStatusCode.BadRequest);

        problem.Error("id").ShouldContain("a UUID of your own");
        problem.Error("day").ShouldContain("to 2025-03-01");
        problem.Error("people").ShouldContain("from 1 to 99");
        problem.Error("hours").ShouldContain("up to 24");
        problem.Error("stems").ShouldContain("or nothing");
        (await given.Lead.ReadAsync(Address(given))).GetArrayLength().ShouldBe(0);
    }

    [Fact]
    public async Task Record_WithAMinus_TakesBackWhatWasTooMany_AndNoMore()
    {
        var given = await GivenChecklist.OpenAsync(service);
        await given.Lead.PostOkAsync(Address(given), new { id = Guid.NewGuid(), day = "2025-03-01", people = 2, hours = 18, quantity = 5 });

        await given.Lead.PostOkAsync(Address(given), new { id = Guid.NewGuid(), day = "2025-03-01", people = 2, hours = -17, quantity = -4.5 });

        (await given.Lead.ReadAsync(Address(given))).EnumerateArray().Sum(record => record.GetProperty("personHours").GetDecimal()).ShouldBe(2);
        (await given.Lead.GetStringAsync($"/tasks/{given.Task}/work")).ShouldContain("Recorded: 2.");
        (await given.Lead.RefusedAsync(HttpMethod.Post, Address(given),
            new { id = Guid.NewGuid(), day = "2025-03-01", people = 2, hours = -2 }, HttpStatusCode.BadRequest))
            .Error("hours").ShouldContain("no more taken back than the 2 hours");
        (await given.Lead.RefusedAsync(HttpMethod.Post, Address(given),
            new { id = Guid.NewGuid(), day = "2025-03-01", people = 2, hours = -1, quantity = 1 }, HttpStatusCode.BadRequest))
            .Error("quantity").ShouldContain("to 0");
    }

    [Fact]
    public async Task Work_ThatWasSaidToBeDoneTooEarly_IsOpenedAgain_AndWhatFollowsHasNoDates()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var followed = await AddFollowersAsync(given);
        await given.Lead.PostOkAsync(
            Address(given), new { id = Guid.NewGuid(), day = "2025-03-01", people = 2, hours = 6, isLast = true });

        using var answer = await given.Lead.PostFormAsync($"/tasks/{given.Task}/work?handler=Reopen", []);

        (await given.Lead.ReadAsync($"/api/tasks/{given.Task}")).GetProperty("completedOn").ValueKind.ShouldBe(System.Text.Json.JsonValueKind.Null);
        (await DatesAsync(given, followed)).ShouldAllBe(one => one.From == "" && one.To == "");
    }

    [Fact]
    public async Task Record_OfAnEarlierDay_ThatSaysItIsDoneToo_MovesNothingBack()
    {
        var given = await GivenChecklist.OpenAsync(service);
        foreach (var day in new[] { "2025-03-01", "2025-02-27" })
            await given.Lead.PostOkAsync(Address(given), new { id = Guid.NewGuid(), day, people = 2, hours = 6, isLast = true });

        (await given.Lead.ReadAsync($"/api/tasks/{given.Task}")).Text("completedOn").ShouldBe("2025-03-01");
    }

    [Fact]
    public async Task Record_ThatIsTheLast_CompletesTheTask_AndSetsTheDatesOfWhatFollows()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var followed = await AddFollowersAsync(given);

        await given.Lead.PostOkAsync(
            Address(given), new { id = Guid.NewGuid(), day = "2025-03-01", people = 2, hours = 6, isLast = true });

        (await given.Lead.ReadAsync($"/api/tasks/{given.Task}")).Text("completedOn").ShouldBe("2025-03-01");
        var dates = await DatesAsync(given, followed);
        dates.ShouldBe([("tie-down", "2026-03-01", "2027-03-01"), ("re-cut", "2028-03-01", "2029-03-01")], ignoreOrder: true);
    }

    [Fact]
    public async Task Record_OfALeafOut_CountsOnTheProperty()
    {
        var given = await GivenChecklist.OpenAsync(service);

        await given.Lead.PostOkAsync(
            Address(given), new { id = Guid.NewGuid(), day = "2025-03-01", people = 2, hours = 1, leafOutSeen = true });

        var property = (await given.Office.Consultant.ReadAsync("/api/properties"))[0].Id();
        (await given.Office.Consultant.ReadAsync($"/api/properties/{property}/observations/leaf-out"))[0].Text("observedOn")
            .ShouldBe("2025-03-01");
    }

    [Fact]
    public async Task Photo_IsShownToWhoeverMaySeeTheTask_AndIsAPhoto()
    {
        var given = await GivenChecklist.OpenAsync(service);
        byte[] png = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 1, 2, 3];

        var text = await PostAsync(given, "a note"u8.ToArray());
        var stored = await PostAsync(given, png);

        text.StatusCode.ShouldBe(HttpStatusCode.OK);
        (await text.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).ShouldContain("give JPEG, PNG or WebP");
        stored.StatusCode.ShouldBe(HttpStatusCode.Redirect);
        var photo = (await given.Lead.ReadAsync(Address(given)))[0].GetProperty("photoIds")[0].GetGuid();
        (await given.Lead.GetByteArrayAsync(new Uri($"/photos/{photo}", UriKind.Relative), TestContext.Current.CancellationToken)).ShouldBe(png);
        var (stranger, _) = await given.AddAsync(Role.Landowner);
        (await stranger.GetAsync(new Uri($"/photos/{photo}", UriKind.Relative), TestContext.Current.CancellationToken)).StatusCode
            .ShouldBe(HttpStatusCode.NotFound);
    }

    private static string Address(GivenChecklist given) => $"/api/tasks/{given.Task}/work";

    private static async Task<HttpResponseMessage> PostAsync(GivenChecklist given, byte[] photo)
    {
        var address = $"/tasks/{given.Task}/work";
        var page = await given.Lead.GetStringAsync(address, TestContext.Current.CancellationToken);
        const string Name = "name=\"__RequestVerificationToken\" type=\"hidden\" value=\"";
        var from = page.LastIndexOf(Name, StringComparison.Ordinal) + Name.Length;
        using var form = new MultipartFormDataContent
        {
            { new StringContent(page[from..page.IndexOf('"', from)]), "__RequestVerificationToken" },
            { new StringContent($"{Guid.NewGuid()}"), "Entry.Id" }, { new StringContent("2025-03-01"), "Entry.Day" },
            { new StringContent("2"), "Entry.People" }, { new StringContent("1.5"), "Entry.Hours" },
        };
        var file = new ByteArrayContent(photo);
        file.Headers.ContentType = new MediaTypeHeaderValue("image/png");
        form.Add(file, "Entry.Photos", "photo.png");
        return await given.Lead.PostAsync(new Uri(address, UriKind.Relative), form, TestContext.Current.CancellationToken);
    }

    private async Task<Guid[]> AddFollowersAsync(GivenChecklist given)
    {
        await using var db = service.Database.Open(given.Office.Organization);
        var followers = Following.Select(practice => new Service.Tasks.PlannedTask
        {
            Key = $"{Guid.NewGuid():N}",
            ParcelId = given.Office.Parcel,
            PracticeId = practice,
            CrewSize = 2,
            FollowsId = given.Task,
        }).ToArray();
        db.AddRange(followers.AsEnumerable<object>());
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        return [.. followers.Select(task => task.Id)];
    }

    private async Task<List<(string Practice, string From, string To)>> DatesAsync(GivenChecklist given, Guid[] tasks)
    {
        await using var db = service.Database.Open(given.Office.Organization);
        return [.. db.PlannedTasks.Where(task => tasks.Contains(task.Id)).AsEnumerable()
            .Select(task => (task.PracticeId, $"{task.NotBefore:R}", $"{task.Deadline:R}"))];
    }
}
