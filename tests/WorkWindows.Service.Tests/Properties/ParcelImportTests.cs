using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Tests;

namespace WorkWindows.Service.Tests.Properties;

public sealed class ParcelImportTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Address = "/api/imports/parcels";

    private static readonly string Sample = File.ReadAllText(
        Path.Combine(ProjectFiles.Root, "docs/samples/parcels.geojson"));

    [Fact]
    public async Task Import_CreatesOnce_AndChangesNothingWhenRepeated()
    {
        var client = await ConsultantAsync();

        var first = await client.ImportAsync(Address, Sample);
        var again = await client.ImportAsync(Address, Sample);

        var (properties, parcels) = (Counts(first, "properties"), Counts(first, "parcels"));
        properties.ShouldBe((4, 0, 0));
        parcels.Created.ShouldBeGreaterThan(4);
        Counts(again, "properties").ShouldBe((0, 0, 4));
        Counts(again, "parcels").ShouldBe((0, 0, parcels.Created));
        (await client.ReadAsync("/api/properties")).GetArrayLength().ShouldBe(4);
    }

    [Theory]
    [InlineData("application/x-www-form-urlencoded")]    // what curl says of any body
    [InlineData("application/octet-stream")]
    [InlineData("application/geo+json")]
    public async Task Import_TakesTheFile_WhateverTheClientCallsIt(string type)
    {
        var client = await ConsultantAsync();
        using var body = new StringContent(Sample);
        body.Headers.ContentType = new(type);

        using var answer = await client.PostAsync(new Uri(Address, UriKind.Relative), body);

        answer.StatusCode.ShouldBe(System.Net.HttpStatusCode.OK);
    }

    [Fact]
    public async Task Import_CountsWhatReadsDifferently()
    {
        var client = await ConsultantAsync();
        var first = Counts(await client.ImportAsync(Address, Sample), "parcels");

        var changed = await client.ImportAsync(Address, Sample.Replace("North slope", "Upper slope"));

        Counts(changed, "parcels").ShouldBe((0, 1, first.Created - 1));
    }

    [Fact]
    public async Task Import_KeepsWhatTheFileDoesNotSpeakOf()
    {
        var client = await ConsultantAsync();
        var file = Collection(Feature("a", "a-1"));
        await client.ImportAsync(Address, file);
        var property = (await client.ReadAsync("/api/properties"))[0];
        await client.PutAsync($"/api/properties/{property.Id()}", new
        {
            name = "Corrected",
            countyFips = "26065",
            state = "MI",
            timeZone = "America/Chicago",
        });
        var parcel = (await client.ReadAsync($"/api/properties/{property.Id()}/parcels"))[0];
        await client.PutAsync($"/api/parcels/{parcel.Id()}/flags", new { flags = Land.Quiet });
        await client.PutAsync($"/api/parcels/{parcel.Id()}/stand", new { stand = Land.Stand("white oak") });

        Counts(await client.ImportAsync(Address, file), "parcels").ShouldBe((0, 0, 1));

        (await client.ReadAsync($"/api/properties/{property.Id()}")).Text("timeZone").ShouldBe("America/Chicago");
        var kept = await client.ReadAsync($"/api/parcels/{parcel.Id()}");
        kept.GetProperty("flags").GetArrayLength().ShouldBe(1);
        kept.GetProperty("stand").GetArrayLength().ShouldBe(1);
    }

    [Fact]
    public async Task Import_StoresNothing_AndNamesEveryFault()
    {
        var client = await ConsultantAsync();
        var file = Collection(
            Feature("a", "good"),
            Feature("b", "at-sea", "[[[-40,35],[-39.9,35],[-39.9,35.1],[-40,35]]]"),
            Feature("c", "bow-tie", "[[[-84.4,42.6],[-84.3,42.7],[-84.3,42.6],[-84.4,42.7],[-84.4,42.6]]]"),
            Feature("d", "wrong-county", county: "42027"));

        var problem = await client.ImportAsync(Address, file, HttpStatusCode.UnprocessableEntity);

        problem.Faults().ShouldBe(
        [
            "3 at-sea geometry -39.925 35.05", "4 bow-tie geometry -84.35 42.65", "5 wrong-county countyFips 42027",
        ], ignoreOrder: false, problem.ToString());
        problem.GetProperty("faults")[2].Text("accepted").ShouldContain("beginning with 26 for MI");
        (await client.ReadAsync("/api/properties")).GetArrayLength().ShouldBe(0);
    }

    [Fact]
    public async Task Import_IsRefused_WhenAParcelBelongsToAnotherProperty()
    {
        var client = await ConsultantAsync();
        await client.ImportAsync(Address, Collection(Feature("a", "a-1")));

        var problem = await client.ImportAsync(
            Address, Collection(Feature("b", "a-1"), Feature("b", "b-1", county: "26067")), HttpStatusCode.UnprocessableEntity);

        problem.Faults().ShouldBe(["2 a-1 property b", "3 b-1 countyFips 26067"]);
    }

    [Fact]
    public async Task Import_WaitsForAnother_SoThatTwoAtOnceCreateOnce()
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        var clients = new List<HttpClient>();
        for (var index = 0; index < 4; index++)
            clients.Add(await service.MachineAsync(organization));

        var answers = await Task.WhenAll(clients.Select(client => client.ImportAsync(Address, Sample)));

        answers.Select(answer => Counts(answer, "properties").Created).Order().ShouldBe([0, 0, 0, 4]);
        (await clients[0].ReadAsync("/api/properties")).GetArrayLength().ShouldBe(4);
    }

    [Fact]
    public async Task Import_AddsLandowners_WhoSeeTheirOwnOnceTheyHaveAPassword()
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        var client = await service.MachineAsync(organization);
        await client.ImportAsync(Address, Collection(
            Feature("a", "a-1", more: "\"landowner\": \"Ada Example\", \"landownerEmail\": \"ada.import@example.org\","),
            Feature("b", "b-1")));

        var ada = (await client.ReadAsync("/api/people")).EnumerateArray()
            .Single(person => person.Text("email") == "ada.import@example.org");
        (ada.Text("displayName"), ada.Text("role")).ShouldBe(("Ada Example", "landowner"));
        (await service.SignInAsync("ada.import@example.org", "")).Answer.StatusCode.ShouldBe(HttpStatusCode.OK);
        (await client.PutAsJsonAsync($"/api/people/{ada.Id()}/password", new { password = ServiceFixture.Password }))
            .StatusCode.ShouldBe(HttpStatusCode.NoContent);
        var (landowner, _) = await service.SignInAsync("ada.import@example.org");
        var seen = await landowner.ReadAsync("/api/properties");
        seen.EnumerateArray().Select(property => property.Text("key")).ShouldBe(["a"]);
    }

    [Fact]
    public async Task Import_NamesALandownerOfAnotherOrganization_WhoCannotSignInHere()
    {
        var (here, there) = (
            await service.Database.AddOrganizationAsync("Here"), await service.Database.AddOrganizationAsync("There"));
        var file = Collection(Feature("a", "a-1", more: "\"landownerEmail\": \"both@example.org\","));
        await (await service.MachineAsync(there)).ImportAsync(Address, file);

        await (await service.MachineAsync(here)).ImportAsync(Address, file);

        await using var db = service.Database.Open(here);
        var person = await db.People.SingleAsync();
        (person.Email, person.UserName, person.Role).ShouldBe(("both@example.org", null, Role.Landowner));
    }

    [Fact]
    public async Task Import_TakesAFormWithAFile()
    {
        using var form = new MultipartFormDataContent { { new StringContent(Sample), "file", "parcels.geojson" } };

        var answer = await (await ConsultantAsync()).PostAsync(Address, form);

        answer.StatusCode.ShouldBe(HttpStatusCode.OK);
    }

    [Fact]
    public async Task Import_IsTooLarge_AboveTenMegabytes()
    {
        var problem = await (await ConsultantAsync()).ImportAsync(
            Address, new byte[10 * 1024 * 1024 + 1], HttpStatusCode.RequestEntityTooLarge);

        problem.Text("detail").ShouldContain("The limit is 10 MB");
    }

    private static string Collection(params string[] features) =>
        $"{{\"type\": \"FeatureCollection\", \"features\": [\n{string.Join(",\n", features)}]}}";

    private static string Feature(
        string property, string parcel, string? coordinates = null, string county = "26065", string more = "") =>
        $$"""{"type": "Feature", "properties": {"property": "{{property}}", "parcel": "{{parcel}}", {{more}} """
        + $$""" "countyFips": "{{county}}", "state": "MI"}, "geometry": {"type": "Polygon", "coordinates": """
        + (coordinates ?? "[[[-84.40,42.60],[-84.39,42.60],[-84.39,42.61],[-84.40,42.60]]]") + "}}";

    private static (int Created, int Updated, int Unchanged) Counts(JsonElement answer, string what)
    {
        var counts = answer.GetProperty(what);
        return (
            counts.GetProperty("created").GetInt32(), counts.GetProperty("updated").GetInt32(),
            counts.GetProperty("unchanged").GetInt32());
    }

    private async Task<HttpClient> ConsultantAsync() =>
        await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));
}
