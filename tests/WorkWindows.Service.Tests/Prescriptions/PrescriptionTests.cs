using System.Net;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Shouldly;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Stands;
using WorkWindows.Engine.Stands.Hours;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Prescriptions;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;

namespace WorkWindows.Service.Tests.Prescriptions;

public sealed class PrescriptionTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private static readonly string[] DeepCover = ["deep-cover"];
    private Guid organization;

    [Fact]
    public async Task Prescription_PutsWorkInOrder_AndPlansWhatFollows_AndNothingTwice()
    {
        var (client, _, parcel) = await GivenAsync();
        var work = new { work = new object[] { new { practice = "hinge-cut", quantity = 2, quantityUnit = "acres" }, new { practice = "overstory-felling" } } };

        var made = (await client.PostOkAsync($"/api/parcels/{parcel}/prescription", work)).EnumerateArray().ToList();
        var again = await client.PostOkAsync($"/api/parcels/{parcel}/prescription", work);

        made.Select(task => task.Text("practice")).ShouldBe(["hinge-cut", "overstory-felling", "tie-down", "re-cut"]);
        var (hinge, felling) = (made[0], made[1]);
        hinge.GetProperty("prerequisiteIds").EnumerateArray().Select(id => id.GetGuid()).ShouldBe([felling.Id()]);
        made.Skip(2).Select(task => task.GetProperty("followsId").GetGuid()).ShouldAllBe(id => id == hinge.Id());
        again.GetArrayLength().ShouldBe(0);
    }

    [Fact]
    public async Task Prescription_OfAHingeCutAndWhatFollowsIt_MakesEachOnce()
    {
        var (client, _, parcel) = await GivenAsync();
        var alone = (await client.PostOkAsync(
            $"/api/parcels/{parcel}/prescription", new { work = new object[] { new { practice = "tie-down" } } }))[0];

        var made = await client.PostOkAsync(
            $"/api/parcels/{parcel}/prescription", new { work = new object[] { new { practice = "re-cut" }, new { practice = "hinge-cut" } } });

        var tasks = (await client.ReadAsync("/api/tasks")).EnumerateArray().ToList();
        tasks.Select(task => task.Text("practice")).ShouldBe(["hinge-cut", "re-cut", "tie-down"], ignoreOrder: true);
        var hinge = made.EnumerateArray().Single(task => task.Text("practice") == "hinge-cut").Id();
        tasks.Where(task => task.Id() != hinge).ShouldAllBe(task =>
            task.GetProperty("followsId").GetGuid() == hinge && task.GetProperty("prerequisiteIds")[0].GetGuid() == hinge);
        tasks.ShouldContain(task => task.Id() == alone.Id());
    }

    [Fact]
    public async Task Prescription_InDeepCover_WaitsForTheHingeCutNearFood()
    {
        var (client, property, near) = await GivenAsync();
        var deep = await client.CreateAsync($"/api/properties/{property}/parcels", new
        {
            key = $"{Guid.NewGuid():N}",
            name = "Deep",
            geometry = Land.Square(-84.3, 42.6),
            flags = DeepCover,
        });
        await FlagAsync(near);
        var work = new { work = new object[] { new { practice = "hinge-cut" } } };
        var first = await client.PostOkAsync($"/api/parcels/{near}/prescription", work);

        var later = await client.PostOkAsync($"/api/parcels/{deep.Id()}/prescription", work);

        later[0].GetProperty("prerequisiteIds").EnumerateArray().Select(id => id.GetGuid()).ShouldBe([first[0].Id()]);
    }

    [Fact]
    public async Task Prescription_NamesWhatIsWrong_AndPlansNothing()
    {
        var (client, _, parcel) = await GivenAsync();

        var problem = await client.RefusedAsync(HttpMethod.Post, $"/api/parcels/{parcel}/prescription",
            new { work = new object[] { new { practice = "cleanup" }, new { practice = "dynamite", crewSize = 0 } } }, HttpStatusCode.BadRequest);

        problem.Error("work[1].practice").ShouldContain("one of: overstory-felling");
        problem.Error("work[1].crewSize").ShouldContain("from 1 to 99");
        (await client.ReadAsync("/api/tasks")).GetArrayLength().ShouldBe(0);
    }

    [Fact]
    public async Task Plan_OfAProperty_TellsDecades_AndWhatBringsMostForAnHour()
    {
        var (client, property, parcel) = await GivenAsync();
        var hinge = await client.CreateAsync("/api/tasks", new { key = $"{Guid.NewGuid():N}", parcelId = parcel, practice = "hinge-cut", quantity = 1, quantityUnit = "acres", crewSize = 2 });
        await client.PutAsync($"/api/tasks/{hinge.Id()}/completion", new { completedOn = "2024-02-10" });
        await Land.TaskAsync(client, parcel, "cleanup");

        var plan = await client.ReadAsync($"/api/properties/{property}/plan");

        var steps = plan.GetProperty("parcels")[0].GetProperty("steps").EnumerateArray().ToList();
        steps.Where(step => step.Text("state") == "due").Take(2).Select(step => $"{step.Text("practice")} {step.Text("from")} {step.Text("to")}")
            .ShouldBe(["Tie-down of hinged stems 2025-02-10 2026-02-10", "Re-cut of hinged stems 2027-02-10 2028-02-10"]);
        steps.Count(step => step.Text("practice").StartsWith("Re-cut", StringComparison.Ordinal)).ShouldBeGreaterThan(4);
        plan.GetProperty("ranked").EnumerateArray().Single().Text("points").ShouldBe("10");
    }

    [Fact]
    public void Ranking_ShowsThatTheFirstFifthOfTheHoursBringsMostOfThePoints()
    {
        var ranked = Ranking.Of(
        [
            new(Guid.NewGuid(), "slow", 20, Time(80), []), new(Guid.NewGuid(), "quick", 80, Time(20), []),
        ]);

        ranked.Select(task => task.Title).ShouldBe(["quick", "slow"]);
        ranked[0].HoursShare.ShouldBe(0.2, 1e-9);
        Ranking.PointsOfFirstFifth(ranked).ShouldBe(0.8, 1e-9);
    }

    [Fact]
    public void Ranking_PutsWhatMustBeDoneFirst_BeforeWhatWaitsForIt()
    {
        var felling = Guid.NewGuid();

        // Alone the hinge brings most for an hour; with the felling it waits for it brings 100 points in 50 hours.
        Ranking.Of(
        [
            new(Guid.NewGuid(), "hinge", 90, Time(10), [felling]), new(felling, "felling", 10, Time(40), []),
            new(Guid.NewGuid(), "planting", 30, Time(10), []), new(Guid.NewGuid(), "trail", 10, Time(10), []),
        ]).Select(task => task.Title).ShouldBe(["planting", "felling", "hinge", "trail"]);
    }

    [Fact]
    public async Task Plan_OfAPrescription_TellsWhenEachStepMayBeExpected_InOrder()
    {
        var (client, property, parcel) = await GivenAsync();
        await client.PostOkAsync($"/api/parcels/{parcel}/prescription", new { work = new object[] { new { practice = "hinge-cut" }, new { practice = "overstory-felling" } } });
        var year = service.Clock.GetCurrentInstant().InUtc().Year;

        var steps = (await client.ReadAsync($"/api/properties/{property}/plan")).GetProperty("parcels")[0].GetProperty("steps")
            .EnumerateArray().Select(step => $"{step.Text("practice").Split(' ')[0]} {step.GetProperty("year").GetInt32() - year}").ToList();

        steps.Take(4).ShouldBe(["Overstory 0", "Hinge 0", "Tie-down 1", "Re-cut 3"]);
        steps.Skip(4).Take(2).ShouldBe(["Re-cut 6", "Re-cut 9"]);
    }

    [Fact]
    public async Task Prescription_OfWhatIsDue_FollowsTheWorkThatAsksForIt_WithItsDates()
    {
        var (client, _, parcel) = await GivenAsync();
        var hinge = await client.CreateAsync("/api/tasks", new { key = $"{Guid.NewGuid():N}", parcelId = parcel, practice = "hinge-cut", crewSize = 2 });
        await client.PutAsync($"/api/tasks/{hinge.Id()}/completion", new { completedOn = "2024-02-10" });

        var prescribed = (await client.PostOkAsync($"/api/parcels/{parcel}/prescription", new { work = new object[] { new { practice = "tie-down" } } }))[0];
        var made = await client.ReadAsync($"/api/tasks/{prescribed.Id()}");

        (made.GetProperty("followsId").GetGuid(), made.Text("notBefore"), made.Text("deadline"))
            .ShouldBe((hinge.Id(), "2025-02-10", "2026-02-10"));
    }

    [Fact]
    public async Task Prescription_FollowsInTheYearsOfTheOrganization()
    {
        var (client, property, parcel) = await GivenAsync();
        await client.PutAsync("/api/weights", new { tieDownFromYears = 2, tieDownToYears = 3 });
        var made = await client.PostOkAsync($"/api/parcels/{parcel}/prescription", new { work = new object[] { new { practice = "hinge-cut" } } });
        await client.PutAsync($"/api/tasks/{made[0].Id()}/completion", new { completedOn = "2024-02-10" });

        var tieDown = await client.ReadAsync($"/api/tasks/{made.EnumerateArray().Single(task => task.Text("practice") == "tie-down").Id()}");
        var steps = (await client.ReadAsync($"/api/properties/{property}/plan")).GetProperty("parcels")[0].GetProperty("steps").EnumerateArray();

        (tieDown.Text("notBefore"), tieDown.Text("deadline")).ShouldBe(("2026-02-10", "2027-02-10"));
        steps.Single(step => step.Text("practice").StartsWith("Tie-down", StringComparison.Ordinal)).Text("from").ShouldBe("2026-02-10");
    }

    [Fact]
    public async Task Plan_WarnsOfAHingeCutUnderAClosedCanopy_UntilTheOverstoryIsFelled()
    {
        var (client, property, _) = await GivenAsync();
        var dense = await client.CreateAsync($"/api/properties/{property}/parcels", new
        {
            key = $"{Guid.NewGuid():N}",
            name = "Dense",
            geometry = Land.Square(-84.3, 42.6),
            stand = new[] { new { species = "northern red oak", dbhMinIn = 12, dbhMaxIn = 12, stemsPerAcre = 300 } },
        });

        await client.PostOkAsync($"/api/parcels/{dense.Id()}/prescription", new { work = new object[] { new { practice = "hinge-cut" } } });
        var shaded = await ProblemsAsync();
        await client.PostOkAsync($"/api/parcels/{dense.Id()}/prescription", new { work = new object[] { new { practice = "overstory-felling" } } });

        shaded.ShouldContain("Remove canopy first.");
        (await ProblemsAsync()).ShouldBe("[]");

        async Task<string> ProblemsAsync() => (await client.ReadAsync($"/api/properties/{property}/plan")).GetProperty("parcels")
            .EnumerateArray().Single(parcel => parcel.Text("name") == "Dense").GetProperty("problems").GetRawText();
    }

    [Fact]
    public async Task Prescription_OfOnePracticeTwice_IsRefused_AndOneThatIsPlannedIsSaidOnThePage()
    {
        var (client, property, parcel) = await GivenAsync();
        (await client.RefusedAsync(HttpMethod.Post, $"/api/parcels/{parcel}/prescription",
            new { work = new object[] { new { practice = "cleanup" }, new { practice = "cleanup" } } }, HttpStatusCode.BadRequest))
            .Error("work[1].practice").ShouldContain("stands twice");
        await client.PostOkAsync($"/api/parcels/{parcel}/prescription", new { work = new object[] { new { practice = "cleanup" } } });
        var name = $"c.{Guid.NewGuid():N}@example.org";
        await service.AddPersonAsync(organization, name, Role.Consultant);
        var consultant = (await service.SignInAsync(name)).Client;

        using var answer = await consultant.PostFormAsync($"/properties/{property}", new()
        {
            ["parcel"] = $"{parcel}",
            ["practice"] = "cleanup",
            ["crewSize"] = "2",
        });

        (await answer.Content.ReadAsStringAsync()).ShouldContain("is planned on this parcel already, so nothing was added");
    }

    private async Task FlagAsync(Guid parcel)
    {
        await using var db = service.Database.Open(organization);
        (await db.Parcels.SingleAsync(row => row.Id == parcel, TestContext.Current.CancellationToken)).SiteFlags = [SiteFlag.NearFood];
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
    }

    private static TaskTime Time(double hours) => new(new(ValueRange.Of(hours), "given"), 1, 0, 0);

    private async Task<(HttpClient Client, Guid Property, Guid Parcel)> GivenAsync()
    {
        organization = await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}");
        var client = await service.MachineAsync(organization);
        var (property, parcel) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI");
        return (client, property, parcel);
    }
}
