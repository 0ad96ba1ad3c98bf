using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Morning;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;
using WorkWindows.Service.Tests.Storage;

namespace WorkWindows.Service.Tests.Morning;

public sealed class MorningPageTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private Guid organization;

    [Fact]
    public async Task Morning_SaysNothingIsKnown_UntilTheTasksWereLookedAt_AndThenTheSameAsTheirDays()
    {
        var (machine, consultant) = await GivenAsync();
        var (_, parcel) = await Land.CreateAsync(machine, -84.4, 42.6, "26065", "MI");
        var task = await Land.TaskAsync(machine, parcel, "tie-down");

        var before = await TextAsync(consultant, "/morning");
        await LookAsync();
        var after = await TextAsync(consultant, "/morning");

        before.ShouldContain("1 task was not looked at");
        before.ShouldContain("No work may be done today. For 1 something is not known");
        after.ShouldNotContain("not looked at");
        await using var db = service.Database.Open(organization);
        var kept = await db.TaskOutlooks.SingleAsync(TestContext.Current.CancellationToken);
        var days = await machine.ReadAsync($"/api/tasks/{task.Id()}/windows?from={kept.FirstDay:uuuu-MM-dd}&days=10");
        days.GetRawText().ShouldContain(kept.States[0] switch { 'o' => "open", 'l' => "limited", 'c' => "closed", _ => "unknown" });
    }

    [Fact]
    public async Task Work_ThatNobodyHasLookedAt_IsLookedAtWhenAWorkerStarts_AndOnce()
    {
        var (machine, _) = await GivenAsync();
        var (_, parcel) = await Land.CreateAsync(machine, -84.4, 42.6, "26065", "MI");
        await Land.TaskAsync(machine, parcel, "tie-down");
        await DueAsync(taken: true);

        await StartAsync();
        var noted = await DueAsync(taken: false);
        await StartAsync();
        (noted, await DueAsync(taken: false)).ShouldBe((1, 1));
        await LookAsync();
        await StartAsync();

        (await DueAsync(taken: false)).ShouldBe(0);

        async Task StartAsync()
        {
            await using var scope = service.Services.CreateAsyncScope();
            scope.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(organization);
            await scope.ServiceProvider.GetRequiredService<FirstLook>().NoteAsync(TestContext.Current.CancellationToken);
        }

        async Task<int> DueAsync(bool taken)
        {
            await using var db = service.Database.Open(organization);
            var due = await db.DueLooks.CountAsync(TestContext.Current.CancellationToken);
            if (taken)
                await db.DueLooks.ExecuteDeleteAsync(TestContext.Current.CancellationToken);
            return due;
        }
    }

    [Fact]
    public async Task Pages_OverAllTasks_AskTheDatabaseAFixedNumberOfTimes()
    {
        var (machine, consultant) = await GivenAsync();
        for (var property = 0; property < 3; property++)
        {
            var (_, parcel) = await Land.CreateAsync(machine, -84.4 + property, 42.6, "26065", "MI");
            await Land.TaskAsync(machine, parcel, "tie-down");
            await Land.TaskAsync(machine, parcel, "cleanup");
        }
        await LookAsync();

        foreach (var page in new[] { "/morning", "/tasks", "/tasks?sort=closing&state=unknown" })
        {
            await consultant.GetStringAsync(page);
            (await service.Calls.OfAsync(() => consultant.GetStringAsync(page))).ShouldBeLessThanOrEqualTo(DatabaseCalls.Most, page);
        }
    }

    [Fact]
    public async Task Pages_OverAllTasks_AreForConsultants_OfTheirOwnOrganization()
    {
        var (machine, _) = await GivenAsync();
        await Land.CreateAsync(machine, -84.4, 42.6, "26065", "MI");
        var owner = $"o.{Guid.NewGuid():N}@example.org";
        await service.AddPersonAsync(organization, owner, Role.Landowner);
        var landowner = (await service.SignInAsync(owner)).Client;
        var (_, stranger) = await GivenAsync();

        foreach (var page in new[] { "/morning", "/tasks", "/import" })
            (await landowner.GetAsync(page)).StatusCode.ShouldBe(HttpStatusCode.Forbidden, page);
        (await TextAsync(stranger, "/tasks")).ShouldContain("0 tasks");
    }

    [Fact]
    public async Task Tasks_ChangedTogether_AreShownFirst_ThenStored_AllOrNone()
    {
        var (machine, consultant) = await GivenAsync();
        var (_, parcel) = await Land.CreateAsync(machine, -84.4, 42.6, "26065", "MI");
        var first = await Land.TaskAsync(machine, parcel, "tie-down");
        var second = await Land.TaskAsync(machine, parcel, "cleanup");
        await machine.PutAsync($"/api/tasks/{second.Id()}", new
        {
            parcelId = parcel,
            practice = "cleanup",
            crewSize = 2,
            notBefore = "2027-03-01",
        });

        var preview = await PostAsync(consultant, false, "2027-04-01", first.Id(), second.Id());
        var seen = await machine.ReadAsync($"/api/tasks/{first.Id()}");
        var stored = await PostAsync(consultant, true, "2027-04-01", first.Id(), second.Id());
        var refused = await PostAsync(consultant, true, "2027-02-01", first.Id(), second.Id());

        preview.ShouldContain("deadline – → 2027-04-01");
        preview.ShouldContain("Change 2 tasks");
        seen.Text("deadline").ShouldBe("");
        stored.ShouldContain("Changed");
        refused.ShouldContain("Nothing was changed.");
        refused.ShouldContain($"{second.Text("key")}: ");
        foreach (var task in new[] { first, second })
            (await machine.ReadAsync($"/api/tasks/{task.Id()}")).Text("deadline").ShouldBe("2027-04-01");
    }

    private static async Task<string> PostAsync(HttpClient client, bool isStored, string deadline, params Guid[] ids)
    {
        var form = new Dictionary<string, string> { ["Bulk.Deadline"] = deadline };
        for (var index = 0; index < ids.Length; index++)
            form[$"Ids[{index}]"] = $"{ids[index]}";
        if (isStored)
            form["store"] = "true";
        using var answer = await client.PostFormAsync("/tasks", form);
        answer.StatusCode.ShouldBe(HttpStatusCode.OK);
        return WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync());
    }

    private static async Task<string> TextAsync(HttpClient client, string page) =>
        WebUtility.HtmlDecode(await client.GetStringAsync(page));

    private async Task LookAsync()
    {
        await using var scope = service.Services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<NightlyRun>().LookAsync(organization, TestContext.Current.CancellationToken);
    }

    private async Task<(HttpClient Machine, HttpClient Consultant)> GivenAsync()
    {
        organization = await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}");
        var name = $"c.{Guid.NewGuid():N}@example.org";
        await service.AddPersonAsync(organization, name, Role.Consultant);
        return (await service.MachineAsync(organization), (await service.SignInAsync(name)).Client);
    }
}
