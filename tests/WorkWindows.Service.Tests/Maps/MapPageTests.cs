using System.Net;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Maps;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;
using WorkWindows.Service.Tests.Storage;

namespace WorkWindows.Service.Tests.Maps;

public sealed class MapPageTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Triangle = "42.6, -84.4\n42.61, -84.4\n42.61, -84.38";
    private Guid organization;

    [Fact]
    public async Task Map_ShowsBoundaries_AndSaysTheSameInAList()
    {
        var (machine, consultant) = await GivenAsync();
        var (property, parcel) = await Land.CreateAsync(machine, -84.4, 42.6, "26065", "MI");
        await Land.TaskAsync(machine, parcel, "tie-down");

        var html = "";
        var calls = await service.Calls.OfAsync(async () => html = await consultant.GetStringAsync($"/map?property={property}"));

        html.ShouldContain("<path class=\"parcel fill-unknown\" d=\"M");
        html.ShouldContain("unknown, 0 of 1 task may be done");
        html.ShouldContain($"/parcels/{parcel}/boundary");
        calls.ShouldBeLessThanOrEqualTo(DatabaseCalls.Most);
    }

    [Fact]
    public async Task Pages_SpeakInTheUnitsOfTheirReader_AndWriteDaysAsTheirRegionDoes()
    {
        var (machine, consultant) = await GivenAsync();
        var (_, parcel) = await Land.CreateAsync(machine, -84.4, 42.6, "26065", "MI");
        var task = await machine.CreateAsync("/api/tasks", new { key = "K", parcelId = parcel, practice = "tie-down", crewSize = 2, quantity = 4.5, quantityUnit = "acres" });
        (await consultant.GetStringAsync($"/tasks/{task.Id()}")).ShouldContain("Slope, 4.5 acres");

        using var saved = await consultant.PostFormAsync("/notices", new() { ["Entry.Temperatures"] = "celsius", ["Entry.Areas"] = "hectares" });
        consultant.DefaultRequestHeaders.AcceptLanguage.ParseAdd("en-US,en;q=0.9");
        var page = await consultant.GetStringAsync($"/tasks/{task.Id()}");

        saved.StatusCode.ShouldBe(HttpStatusCode.OK);
        page.ShouldContain("Slope, 1.82 ha");
        page.ShouldContain("Sat Mar 1, 2025");
        (await consultant.GetStringAsync($"/parcels/{parcel}/boundary")).ShouldMatch("text-anchor=\"middle\">[0-9]+ k?m</text>");
    }

    [Fact]
    public async Task Map_ShowsALandowner_TheirOwnLand()
    {
        var (machine, _) = await GivenAsync();
        await Land.CreateAsync(machine, -84.4, 42.6, "26065", "MI");
        var name = $"o.{Guid.NewGuid():N}@example.org";
        await service.AddPersonAsync(organization, name, Role.Landowner);
        var owner = (await service.SignInAsync(name)).Client;

        (await owner.GetStringAsync("/map")).ShouldContain("There is no land yet.");
        (await owner.GetAsync($"/parcels/{Guid.NewGuid()}/boundary")).StatusCode.ShouldBe(HttpStatusCode.Forbidden);
    }

    [Fact]
    public async Task Boundary_IsSaved_AndWhatIsWrongWithItKeepsWhatWasTyped()
    {
        var (machine, consultant) = await GivenAsync();
        var (_, parcel) = await Land.CreateAsync(machine, -84.4, 42.6, "26065", "MI");
        var page = $"/parcels/{parcel}/boundary";

        using var crossed = await consultant.PostFormAsync(page, new() { ["Entry.Corners"] = "42.6, -84.4\n42.61, -84.38\n42.61, -84.4\n42.6, -84.38" });
        using var moved = await consultant.PostFormAsync(page, new() { ["Entry.Corners"] = Triangle, ["Entry.Move"] = "closer", ["Entry.At"] = "42.6,-84.4,12" });
        var before = await machine.ReadAsync($"/api/parcels/{parcel}");
        using var saved = await consultant.PostFormAsync(page, new() { ["Entry.Corners"] = Triangle });

        var said = WebUtility.HtmlDecode(await crossed.Content.ReadAsStringAsync());
        said.ShouldContain("a boundary that neither crosses nor overlaps itself");
        said.ShouldContain("42.61, -84.38\n42.61, -84.4\n42.6, -84.38</textarea>");
        (await moved.Content.ReadAsStringAsync()).ShouldContain("value=\"42.6,-84.4,13\"");
        before.GetProperty("boundary").GetProperty("coordinates")[0][0].GetArrayLength().ShouldBe(5);
        saved.StatusCode.ShouldBe(HttpStatusCode.Redirect);
        (await machine.ReadAsync($"/api/parcels/{parcel}")).GetProperty("boundary").GetProperty("coordinates")[0][0].GetArrayLength().ShouldBe(4);
    }

    [Fact]
    public async Task Parcel_IsAdded_WithTheBoundaryThatWasDrawn()
    {
        var (machine, consultant) = await GivenAsync();
        var (property, _) = await Land.CreateAsync(machine, -84.4, 42.6, "26065", "MI");
        var page = $"/properties/{property}/parcels/new";
        var key = $"{Guid.NewGuid():N}";

        using var refused = await consultant.PostFormAsync(page, new() { ["Parcel.Key"] = key, ["Entry.Corners"] = "here" });
        using var added = await consultant.PostFormAsync(page, new() { ["Parcel.Key"] = key, ["Parcel.Name"] = "Drawn", ["Entry.Corners"] = Triangle });

        (await refused.Content.ReadAsStringAsync()).ShouldContain($"value=\"{key}\"");
        added.StatusCode.ShouldBe(HttpStatusCode.Redirect);
        (await machine.ReadAsync($"/api/properties/{property}/parcels")).EnumerateArray().Select(parcel => parcel.Text("name"))
            .ShouldBe(["Drawn", "Slope"]);
    }

    [Theory]
    [InlineData(null, null, null)]
    [InlineData("https://tiles.example.org/{z}/{x}/{y}.png", "Example", null)]
    [InlineData("https://tiles.example.org/{z}/{x}/{y}.png", null, "Map:Credit")]
    [InlineData("https://tiles.example.org/all.png", "Example", "Map:Tiles")]
    [InlineData("file:///{z}/{x}/{y}.png", "Example", "Map:Tiles")]
    public void Tiles_AreAnAddressWithPlacesInIt_AndSomebodyIsNamed(string? tiles, string? credit, string? says)
    {
        var options = new MapOptions { Tiles = tiles, Credit = credit };

        string.Join(' ', options.Validate(new(options)).Select(fault => fault.ErrorMessage)).ShouldStartWith(says ?? "");
        options.Validate(new(options)).Any().ShouldBe(says is not null);
    }

    [Fact]
    public async Task Pages_LetBrowsersFetchTiles_FromTheAddressThatIsSetAlone()
    {
        await using var tiled = service.With(("Map:Tiles", "https://tiles.example.org/{z}/{x}/{y}.png"), ("Map:Credit", "Example"));

        using var answer = await tiled.CreateClient().GetAsync("/sign-in");
        using var usual = await service.Anonymous().GetAsync("/sign-in");

        answer.Headers.GetValues("Content-Security-Policy").Single().ShouldEndWith("; img-src 'self' https://tiles.example.org");
        usual.Headers.GetValues("Content-Security-Policy").Single().ShouldNotContain("img-src");
    }

    private async Task<(HttpClient Machine, HttpClient Consultant)> GivenAsync()
    {
        organization = await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}");
        var name = $"c.{Guid.NewGuid():N}@example.org";
        await service.AddPersonAsync(organization, name, Role.Consultant);
        return (await service.MachineAsync(organization), (await service.SignInAsync(name)).Client);
    }
}
