using System.Net;
using System.Text;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Shouldly;
using UglyToad.PdfPig;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Review;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Notices;
using WorkWindows.Service.Tests.Properties;
using WorkWindows.Service.Tests.Rules;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Tests.Review;

/// <summary>On 1 March 2025 the house's rules closed the days from 5 to 20 March; a month later somebody asks why.</summary>
public sealed class ReviewTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Day = "2025-03-10";
    private const string March = "from=2025-03-01&to=2025-03-31";

    [Fact]
    public async Task Review_TellsWhatWasDecided_WhatWasKnown_AndReplaysTheSame()
    {
        var given = await GivenAsync();

        var review = await given.Consultant.ReadAsync(Api(given));

        (review.Text("state"), review.Text("decidedAt")).ShouldBe(("closed", "2025-03-01T12:00:00Z"));
        var decided = (await given.Consultant.ReadAsync($"/api/tasks/{given.Task}/decisions"))[0];
        review.Text("hash").ShouldBe(decided.Text("hash"));
        var rule = review.GetProperty("deciding").EnumerateArray().ShouldHaveSingleItem();
        (rule.Text("id"), rule.Text("because"), rule.Text("source")).ShouldBe(
            ("house.quiet", "It is so.", "House rules, 2025"));
        var replay = review.GetProperty("replay");
        (replay.Text("isSame"), replay.Text("hash")).ShouldBe(("True", decided.Text("hash")));
        Known(review, "Forecast").ShouldBe("issued Sat 1 Mar 2025, 7:00");
        Known(review, "Rule pack House rules").ShouldStartWith("version 1, SHA-256 ");
        Known(review, "Exceptions").ShouldBe("none was in force");
        review.GetProperty("since").Text("state").ShouldBe("closed");
        review.GetProperty("since").GetProperty("changes").GetArrayLength().ShouldBe(0);
    }

    [Fact]
    public async Task List_OfMoreTasksThanAnybodyWaitsFor_AsksForAProperty()
    {
        var given = await GivenAsync();
        var property = (await given.Consultant.ReadAsync("/api/properties"))[0].Id();
        var (_, parcel) = await Land.CreateAsync(given.Consultant, -84.4, 42.6, "26065", "MI");
        await using (var db = service.Database.Open(given.Organization))
        {
            db.AddRange(Enumerable.Range(0, ReviewList.MostTasks).Select(index => GivenLand.NewTask(parcel, $"many-{index}", "cleanup")));
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        (await PageAsync(given.Consultant, $"/review?{March}")).ShouldContain("1,001 tasks is too much to read at once: choose a property");
        (await PageAsync(given.Consultant, $"/review?{March}&property={property}")).ShouldContain("Mon 10 Mar 2025: ");
    }

    [Fact]
    public async Task Page_ShowsIt_AndTheReplayButtonSaysThatItIsTheSame()
    {
        var given = await GivenAsync();

        var page = await PageAsync(given.Consultant, $"/review/{given.Task}/{Day}");
        var compared = await PageAsync(given.Consultant, $"/review/{given.Task}/{Day}?now=true");
        var replayed = await PageAsync(given.Consultant, $"/review/{given.Task}/{Day}?replay=true");

        page.ShouldContain("Why closed on Mon 10 Mar 2025");
        page.ShouldContain("Rule house.quiet");
        page.ShouldNotContain("The same answer");
        replayed.ShouldContain("The same answer");
        compared.ShouldContain("say <b>closed</b>, as then.");
        compared.ShouldContain("The rule packs and exceptions are the same");
        (await PageAsync(given.Consultant, $"/review/{given.Task}/2025-09-01")).ShouldContain(
            "No decision about this day was stored");
    }

    [Fact]
    public async Task ChangedPack_IsADifferenceInWords_AndTheDecisionStaysWhatItWas()
    {
        var given = await GivenAsync();
        service.Clock.Reset(Instant.FromUtc(2025, 3, 2, 12, 0));
        await given.PutPackAsync(HousePack.Text("2").Replace("to: 03-20", "to: 03-08"));

        var review = await given.Consultant.ReadAsync(Api(given));

        (review.Text("state"), review.GetProperty("replay").Text("isSame")).ShouldBe(("closed", "True"));
        review.GetProperty("since").Text("state").ShouldNotBe("closed");
        Changes(review).ShouldBe(
        [
            "The rule pack House rules changed from 1 to 2.",
            "Rule house.quiet: no longer holds (10 Mar 2025)",
        ]);
    }

    [Fact]
    public async Task Exception_ThatWasMadeLater_IsADifferenceInWords_AndTheEarlierDecisionIsShownOnDemand()
    {
        var given = await GivenAsync();
        service.Clock.Reset(Instant.FromUtc(2025, 3, 2, 12, 0));
        await given.Consultant.CreateAsync(given.Overrides, new
        {
            ruleId = "house.quiet",
            lastDay = Day,
            reason = "Nobody lives there in March.",
        });
        var before = await given.Consultant.ReadAsync(Api(given));
        await Nights.DecideAsync(service, given.Organization, new(2025, 3, 2), new(2025, 3, 31));

        var after = await given.Consultant.ReadAsync(Api(given));
        var first = await given.Consultant.ReadAsync($"{Api(given)}?decision={before.Text("decisionId")}");

        Changes(before).ShouldContain(sentence => sentence.StartsWith(
            $"There is a new exception: Rule house.quiet, by {given.Name}, until 10 Mar 2025"));
        after.Text("state").ShouldBe("limited");
        Known(after, "Exception to 'Rule house.quiet'").ShouldBe(
            $"by {given.Name} until 10 Mar 2025: Nobody lives there in March.");
        after.GetProperty("history").EnumerateArray().Select(one => one.Text("state")).ShouldBe(["limited", "closed"]);
        first.Text("state").ShouldBe("closed");
    }

    [Fact]
    public async Task Replay_SaysWhatDiffers_WhenADecisionIsNotWhatItsInputsGive()
    {
        var given = await GivenAsync();
        await using (var db = service.Database.Open(given.Organization))
        {
            var real = await db.Decisions.AsNoTracking().SingleAsync(TestContext.Current.CancellationToken);
            var states = Encoding.UTF8.GetString(real.Content);
            db.Add(new Decision
            {
                TaskId = real.TaskId,
                EvaluatedAt = real.EvaluatedAt + Duration.FromMinutes(1),
                FirstDay = real.FirstDay,
                LastDay = real.LastDay,
                Hash = real.Hash,
                Content = Encoding.UTF8.GetBytes(states.Replace("CCCCCCCCCCCCCCCC", "CCCCCOCCCCCCCCCC")),
                SnapshotHash = real.SnapshotHash,
                PackHashes = real.PackHashes,
            });
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        var review = await given.Consultant.ReadAsync(Api(given));

        review.Text("state").ShouldBe("open");
        review.GetProperty("replay").Text("isSame").ShouldBe("False");
        var differences = review.GetProperty("replay").GetProperty("differences").EnumerateArray()
            .Select(one => one.GetString()!).ToArray();
        differences[0].ShouldContain("not the one that was noted");
        differences.ShouldContain("10 Mar 2025: was open, now closed");
        (await PageAsync(given.Consultant, $"/review/{given.Task}/{Day}?replay=true")).ShouldContain(
            "do not give what was decided");
    }

    [Fact]
    public async Task Pdf_Opens_WithTheHashAndTheReasons()
    {
        var given = await GivenAsync();
        var hash = (await given.Consultant.ReadAsync(Api(given))).Text("hash");

        using var answer = await given.Consultant.GetAsync($"{Api(given)}/pdf");

        answer.Content.Headers.ContentType!.MediaType.ShouldBe("application/pdf");
        using var pdf = PdfDocument.Open(await answer.Content.ReadAsByteArrayAsync());
        var text = string.Join(' ', pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text));
        text.ShouldContain(hash);
        text.ShouldContain("Closed on Mon 10 Mar 2025: Tie-down of hinged stems, Slope");
        text.ShouldContain("Rule house.quiet. It is so.");
        text.ShouldContain("common practice: House rules, 2025");
        text.ShouldContain("byte for byte");
    }

    [Fact]
    public async Task Csv_IsATable_AndNothingThatASpreadsheetRuns()
    {
        var given = await GivenAsync("\"=1+1, a quiet month\"");

        var rows = (await given.Consultant.GetStringAsync($"{Api(given)}/csv")).Split("\r\n");

        rows[0].ShouldBe("section,what,value");
        rows.ShouldContain("The decision,State,closed");
        rows.ShouldContain(row => row.StartsWith("The decision,SHA-256,"));
        rows.ShouldContain("What decided it,Rule: closes,\"'=1+1, a quiet month. It is so.\"");
    }

    [Fact]
    public async Task List_IsFiltered_AndCountsTheDaysThatRulesCost()
    {
        var given = await GivenAsync();

        var all = await PageAsync(given.Consultant, $"/review?{March}");
        var closed = await PageAsync(given.Consultant, $"/review?{March}&state=closed&rule=house.quiet");
        var elsewhere = await PageAsync(given.Consultant, $"/review?{March}&property={Guid.NewGuid()}");
        var wrong = await PageAsync(given.Consultant, "/review?from=2025-03-10&to=2025-03-01");

        all.ShouldContain("<h2>31 days</h2>");
        closed.ShouldContain("<h2>16 days</h2>");
        closed.ShouldContain($"/review/{given.Task}/{Day}");
        closed.ShouldNotContain($"/review/{given.Task}/2025-03-04");
        closed.ShouldContain("<td>16</td>");
        elsewhere.ShouldContain("Nothing was decided about days that match");
        wrong.ShouldContain("a day that is not before");
    }

    [Fact]
    public async Task List_IsFiltered_ByOwnerAndCrew()
    {
        var given = await GivenAsync();
        var (owner, lead) = (await AddAsync(given, Role.Landowner), await AddAsync(given, Role.CrewLead));
        await using (var db = service.Database.Open(given.Organization))
        {
            (await db.Properties.SingleAsync(TestContext.Current.CancellationToken)).LandownerId = owner.Id;
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        (await PageAsync(given.Consultant, $"/review?{March}&person={owner.Id}")).ShouldContain("<h2>31 days</h2>");
        (await PageAsync(given.Consultant, $"/review?{March}&person={lead.Id}")).ShouldContain("Nothing was decided");
    }

    [Fact]
    public async Task List_IsPaged()
    {
        var given = await GivenAsync();
        await Land.TaskAsync(given.Consultant, given.Parcel, "tie-down");
        service.Clock.Reset(Instant.FromUtc(2025, 3, 1, 12, 0));
        await Nights.DecideAsync(service, given.Organization, new(2025, 3, 1), new(2025, 3, 31));
        service.Clock.Reset(Instant.FromUtc(2025, 4, 14, 12, 0));

        var first = await PageAsync(given.Consultant, $"/review?{March}");
        var second = await PageAsync(given.Consultant, $"/review?{March}&at=2");

        first.ShouldContain("Page 1 of 2");
        first.ShouldContain("Mon 31 Mar 2025");
        second.ShouldContain("Sat 1 Mar 2025: ");
        second.ShouldContain("rel=\"prev\"");
    }

    [Fact]
    public async Task Decisions_OfOthers_AreNeverShown()
    {
        var (given, other) = (await GivenAsync(), await GivenAsync());
        var stranger = await AddAsync(given, Role.Landowner);
        var owner = await AddAsync(given, Role.Landowner);
        await using (var db = service.Database.Open(given.Organization))
        {
            (await db.Properties.SingleAsync(TestContext.Current.CancellationToken)).LandownerId = owner.Id;
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        foreach (var client in new[] { other.Consultant, stranger.Client })
        {
            foreach (var address in new[] { Api(given), $"{Api(given)}/pdf", $"{Api(given)}/csv", $"/review/{given.Task}/{Day}" })
                (await client.GetAsync(address)).StatusCode.ShouldBe(HttpStatusCode.NotFound, address);
            (await PageAsync(client, $"/review?{March}")).ShouldNotContain($"{given.Task}");
        }
        (await PageAsync(owner.Client, $"/review?{March}")).ShouldContain($"/review/{given.Task}/{Day}");
        (await PageAsync(owner.Client, $"/review/{given.Task}/{Day}")).ShouldContain("Why closed");
        (await PageAsync(owner.Client, $"/review?{March}")).ShouldNotContain("Owner or crew");
    }

    [Fact]
    public async Task Pages_AskTheDatabaseTwelveTimesAtMost()
    {
        var given = await GivenAsync();

        foreach (var page in new[] { $"/review?{March}", $"/review/{given.Task}/{Day}?replay=true" })
            (await service.Calls.OfAsync(() => PageAsync(given.Consultant, page))).ShouldBeInRange(1, DatabaseCalls.Most, page);
    }

    private async Task<Consultancy> GivenAsync(string title = "Rule house.quiet")
    {
        service.Clock.Reset(Instant.FromUtc(2025, 3, 1, 12, 0));
        var given = await Consultancy.OpenAsync(service);
        await given.PutPackAsync(HousePack.Text().Replace("title: Rule house.quiet", $"title: {title}"));
        await Nights.DecideAsync(service, given.Organization, new(2025, 3, 1), new(2025, 3, 31));
        service.Clock.Reset(Instant.FromUtc(2025, 4, 14, 12, 0));
        return given;
    }

    private async Task<(HttpClient Client, Guid Id)> AddAsync(Consultancy given, Role role)
    {
        var name = $"{Guid.NewGuid():N}@example.org";
        var id = await service.AddPersonAsync(given.Organization, name, role);
        return ((await service.SignInAsync(name)).Client, id);
    }

    private static string Api(Consultancy given) => $"/api/tasks/{given.Task}/days/{Day}/review";

    private static async Task<string> PageAsync(HttpClient client, string address) =>
        WebUtility.HtmlDecode(await client.GetStringAsync(address));

    private static string Known(JsonElement review, string what) =>
        review.GetProperty("known").EnumerateArray().Single(one => one.Text("what") == what).Text("value");

    private static string[] Changes(JsonElement review) =>
        [.. review.GetProperty("since").GetProperty("changes").EnumerateArray().Select(one => one.GetString()!)];
}
