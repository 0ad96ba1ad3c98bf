using System.Net;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Rules;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Tests.Rules;

public sealed class PackApiTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Pack_BearsOnTheDaysOfTheWholeOrganization_AndOfNoOther()
    {
        var (given, other) = (await Consultancy.OpenAsync(service), await Consultancy.OpenAsync(service));

        var view = await given.PutPackAsync(HousePack.Text());

        (view.Text("id"), view.Text("version"), view.Text("isShipped")).ShouldBe(("house", "1", "False"));
        (await given.StateAsync("2025-03-08")).ShouldBe("closed");
        (await other.StateAsync("2025-03-08")).ShouldBe("open");
        (await given.Consultant.GetStringAsync(HousePack.Address)).ShouldBe(HousePack.Text());
        (await other.Consultant.GetAsync(HousePack.Address)).StatusCode.ShouldBe(HttpStatusCode.NotFound);
        (await Ids(given.Consultant)).ShouldBe((await Ids(other.Consultant)).Append("house"));
    }

    [Fact]
    public async Task Pack_OfAProperty_BearsOnItAlone()
    {
        var given = await Consultancy.OpenAsync(service);
        var (_, parcel) = await Land.CreateAsync(given.Consultant, -84.5, 42.6, "26065", "MI");
        await MildWeather.AddAsync(service, given.Organization, parcel);
        var elsewhere = (await Land.TaskAsync(given.Consultant, parcel, "tie-down")).Id();

        await given.PutPackAsync(HousePack.Text(level: "property"), Of(given.Property));

        (await given.StateAsync("2025-03-08")).ShouldBe("closed");
        (await given.StateAsync("2025-03-08", elsewhere)).ShouldBe("open");
        await given.PutPackAsync(HousePack.Text("2"), status: HttpStatusCode.Conflict);
    }

    [Fact]
    public async Task Pack_OfAProperty_LiftsAGuidelineOfTheOrganization_AndHoldsItThere()
    {
        var given = await Consultancy.OpenAsync(service);
        await given.PutPackAsync(HousePack.Text());
        var lifting = "pack: hollow\nversion: \"1\"\ntitle: Hollow\nlevel: property\nrules:\n"
            + HousePack.Rule("hollow.dry", "lifts", "calendar: { from: 03-05, to: 03-10 }", more: "lifts: house.quiet");
        var address = $"/api/rule-packs/hollow?property={given.Property}";

        await given.PutPackAsync(lifting, address);

        (await given.StateAsync("2025-03-10")).ShouldBe("open");
        (await given.StateAsync("2025-03-11")).ShouldBe("closed");
        var without = HousePack.Text("2").Replace("house.quiet", "house.silent");
        (await given.PutPackAsync(without, status: HttpStatusCode.Conflict)).Text("detail").ShouldContain("'hollow'");
        (await given.Consultant.DeleteAsync(HousePack.Address)).StatusCode.ShouldBe(HttpStatusCode.Conflict);
        var law = lifting.Replace("lifts: house.quiet", "lifts: house.law").Replace("\"1\"", "\"2\"");
        (await given.PutPackAsync(law, address, HttpStatusCode.UnprocessableEntity))
            .GetProperty("faults")[0].Text("accepted").ShouldContain("regulation and life safety stand");
    }

    [Fact]
    public async Task Pack_WithFaults_ChangesNothing_AndEveryFaultIsListed()
    {
        var given = await Consultancy.OpenAsync(service);
        await given.PutPackAsync(HousePack.Text());
        var looks = given.Looks();
        var wrong = HousePack.Text("2").Replace("effect: limits", "effect: forbids").Replace("03-05", "03-55")
            .Replace("pack: house", "pack: home").Replace("house.vest", "season.autumn");

        var problem = await given.PutPackAsync(wrong, status: HttpStatusCode.UnprocessableEntity);

        problem.GetProperty("faults").EnumerateArray()
            .Select(fault => $"{fault.Text("line")}:{fault.Text("column")} {fault.Text("key")} '{fault.Text("value")}'")
            .ShouldBe(
            [
                "1:7 pack 'home'", "10:31 rules[0].when.calendar.from '03-55'", "16:13 rules[1].effect 'forbids'",
                "40:9 rules[4].id 'season.autumn'",
            ]);
        problem.GetProperty("faults")[0].Text("accepted").ShouldBe("house");
        (await given.StateAsync("2025-03-08")).ShouldBe("closed");
        (await given.Consultant.GetStringAsync(HousePack.Address)).ShouldBe(HousePack.Text());
        given.Looks().ShouldBe(looks);
        (await given.AuditAsync("?kind=rule-pack")).Length.ShouldBe(1);
    }

    [Theory]
    [InlineData("national", "2")]
    [InlineData("property", "2")]
    public async Task Pack_IsRefused_AtAnotherLevel(string level, string version)
    {
        var given = await Consultancy.OpenAsync(service);

        var problem = await given.PutPackAsync(
            HousePack.Text(version, level), status: HttpStatusCode.UnprocessableEntity);

        var fault = problem.GetProperty("faults").EnumerateArray().ShouldHaveSingleItem();
        (fault.Text("key"), fault.Text("value"), fault.Text("accepted")).ShouldBe(("level", level, "organization"));
    }

    [Fact]
    public async Task Pack_ThatComesWithTheService_IsNobodysToChange()
    {
        var given = await Consultancy.OpenAsync(service);

        await given.PutPackAsync(HousePack.Text(id: "us"), "/api/rule-packs/us", HttpStatusCode.Conflict);
        (await given.Consultant.DeleteAsync("/api/rule-packs/us")).StatusCode.ShouldBe(HttpStatusCode.Conflict);
        (await given.Consultant.GetStringAsync("/api/rule-packs/us")).ShouldStartWith("pack: us\n");
    }

    [Fact]
    public async Task Pack_PutTwice_ChangesNothing()
    {
        var given = await Consultancy.OpenAsync(service);
        var first = await given.PutPackAsync(HousePack.Text());
        var looks = given.Looks();

        var second = await given.PutPackAsync(HousePack.Text().Replace("\n", "\r\n"));

        second.ToString().ShouldBe(first.ToString());
        given.Looks().ShouldBe(looks);
        (await given.AuditAsync()).ShouldBe([$"rule-pack by {given.Name}: nothing -> row"]);
    }

    [Fact]
    public async Task Pack_NeedsANewVersion_ForANewText_AndOldTextsServeReplays()
    {
        var given = await Consultancy.OpenAsync(service);
        await given.PutPackAsync(HousePack.Text());
        await Nights.DecideAsync(service, given.Organization, new(2025, 3, 1), new(2025, 3, 31));
        var looks = given.Looks();

        (await given.PutPackAsync(HousePack.Text().Replace("03-20", "03-25"), status: HttpStatusCode.Conflict))
            .Text("detail").ShouldContain("raise the version");
        await given.PutPackAsync(HousePack.Text("2").Replace("03-20", "03-25"));
        (await given.PutPackAsync(HousePack.Text().Replace("03-20", "03-27"), status: HttpStatusCode.Conflict))
            .Text("detail").ShouldContain("raise the version");

        (await given.StateAsync("2025-03-24")).ShouldBe("closed");
        given.Looks().ShouldBe(looks + 1);
        (await given.Consultant.DeleteAsync(HousePack.Address)).StatusCode.ShouldBe(HttpStatusCode.NoContent);
        (await given.StateAsync("2025-03-08")).ShouldBe("open");
        given.Looks().ShouldBe(looks + 2);
        (await given.Consultant.DeleteAsync(HousePack.Address)).StatusCode.ShouldBe(HttpStatusCode.NotFound);
        var decisions = await given.Consultant.ReadAsync($"/api/tasks/{given.Task}/decisions");
        (await given.Consultant.ReadAsync($"/api/decisions/{decisions[0].Id()}/replay")).Text("isSame").ShouldBe(
            "True");
        (await given.AuditAsync("?kind=rule-pack")).ShouldBe(
        [
            $"rule-pack by {given.Name}: nothing -> row", $"rule-pack by {given.Name}: row -> row",
            $"rule-pack by {given.Name}: row -> nothing",
        ]);
    }

    [Fact]
    public async Task Pack_IsNotTaken_AtALowerVersion_EvenWithItsEarlierText()
    {
        var given = await Consultancy.OpenAsync(service);
        await given.PutPackAsync(HousePack.Text("9"));
        await given.PutPackAsync(HousePack.Text("10"));

        foreach (var lower in new[] { HousePack.Text("9"), HousePack.Text("9.5") })
        {
            (await given.PutPackAsync(lower, status: HttpStatusCode.Conflict))
                .Text("detail").ShouldContain("stands at the version '10'");
        }

        (await given.Consultant.GetStringAsync(HousePack.Address)).ShouldBe(HousePack.Text("10"));
        await given.PutPackAsync(HousePack.Text("10.1"));
    }

    [Fact]
    public async Task Pack_ThatLifts_IsHandedInByAPerson_NeverByAMachine()
    {
        var given = await Consultancy.OpenAsync(service);
        var machine = await service.MachineAsync(given.Organization);
        await given.PutPackAsync(HousePack.Text());
        var lifting = "pack: hollow\nversion: \"1\"\ntitle: Hollow\nlevel: property\nrules:\n"
            + HousePack.Rule("hollow.dry", "lifts", "calendar: { from: 03-05, to: 03-10 }", more: "lifts: house.quiet");
        var address = $"/api/rule-packs/hollow?property={given.Property}";

        var problem = await Consultancy.PutPackAsync(machine, lifting, address, HttpStatusCode.Forbidden);

        problem.Text("detail").ShouldContain("'hollow' lifts rules");
        (await given.StateAsync("2025-03-08")).ShouldBe("closed");
        await given.PutPackAsync(lifting, address);
        (await given.StateAsync("2025-03-08")).ShouldBe("open");
    }

    /// <summary>As after an update of the service that reads packs otherwise.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Pack_ThatCanNoLongerBeRead_IsReplacedOrRemoved(bool replaced)
    {
        var given = await Consultancy.OpenAsync(service);
        await using (var db = service.Database.Open(given.Organization))
        {
            var hash = $"{Guid.NewGuid():N}";
            db.Add(new StoredPack { Hash = hash, PackId = "house", Version = "0", Text = "pack: house\nolder: true\n" });
            db.Add(new OrganizationPack
            {
                PackId = "house",
                Version = "0",
                Hash = hash,
                ChangedAt = service.Clock.GetCurrentInstant(),
            });
            await db.SaveChangesAsync();
        }
        (await given.Consultant.GetAsync($"/api/tasks/{given.Task}/days/2025-03-08")).StatusCode
            .ShouldBe(HttpStatusCode.InternalServerError);

        if (replaced)
            await given.PutPackAsync(HousePack.Text());
        else
            (await given.Consultant.DeleteAsync(HousePack.Address)).StatusCode.ShouldBe(HttpStatusCode.NoContent);

        (await given.StateAsync("2025-03-08")).ShouldBe(replaced ? "closed" : "open");
    }

    [Fact]
    public async Task Pack_IsForConsultants_AndReadByCrews()
    {
        var given = await Consultancy.OpenAsync(service);
        var machine = await service.MachineAsync(given.Organization);
        var crew = await service.MachineAsync(given.Organization, Role.CrewMember);

        await Consultancy.PutPackAsync(machine, HousePack.Text(), HousePack.Address);
        await Consultancy.PutPackAsync(crew, HousePack.Text("2"), HousePack.Address, HttpStatusCode.Forbidden);

        (await crew.GetStringAsync(HousePack.Address)).ShouldBe(HousePack.Text());
        (await given.AuditAsync()).ShouldBe(["rule-pack by Consultant: nothing -> row"]);
    }

    [Fact]
    public async Task Pack_IsNotFound_ForAPropertyOfAnotherOrganization()
    {
        var (given, other) = (await Consultancy.OpenAsync(service), await Consultancy.OpenAsync(service));

        await given.PutPackAsync(HousePack.Text(level: "property"), Of(other.Property), HttpStatusCode.NotFound);
    }

    private static string Of(Guid property) => $"{HousePack.Address}?property={property}";

    private static async Task<string[]> Ids(HttpClient client) =>
        [.. (await client.ReadAsync("/api/rule-packs")).EnumerateArray().Select(pack => pack.Text("id"))];
}
