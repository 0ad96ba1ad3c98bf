using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;

namespace WorkWindows.Service.Tests.Imports;

public sealed partial class ImportPageTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Header = "task,parcel,practice,quantity,unit,crewSize,deadline,scheduledOn,prerequisites,crewLead";

    [Fact]
    public async Task File_IsShownFirst_ThenStored_AndChangesNothingAgain()
    {
        var (machine, consultant, parcel) = await GivenAsync();
        await machine.ImportAsync("/api/imports/tasks", $"{Header}\nA,{parcel},cleanup,2,acres,2,2027-03-01,,,\n");
        var file = $"{Header}\nA,{parcel},cleanup,2,acres,3,2027-04-01,,A2,\nA2,{parcel},hinge-cut,40,stems,2,,,,\n";

        var preview = await SendAsync(consultant, file);
        var untouched = (await machine.ReadAsync("/api/tasks")).GetArrayLength();
        var stored = await StoreAsync(consultant, preview);
        var again = await SendAsync(consultant, file);

        preview.ShouldContain("Tasks: 1 new, 1 changed, 0 as they are.");
        preview.ShouldContain("crewSize: 2 → 3");
        preview.ShouldContain("deadline: 2027-03-01 → 2027-04-01");
        preview.ShouldContain("prerequisites: changes");
        untouched.ShouldBe(1);
        stored.ShouldContain("Stored. Tasks: 1 new, 1 changed");
        (await machine.ReadAsync("/api/tasks")).GetArrayLength().ShouldBe(2);
        again.ShouldContain("Tasks: 0 new, 0 changed, 2 as they are.");
        again.ShouldNotContain("Store it");
    }

    [Fact]
    public async Task Land_IsShownFirst_TooWithWhatChanges()
    {
        var (machine, consultant, _) = await GivenAsync();
        const string square = "[[[-84.4,42.6],[-84.39,42.6],[-84.39,42.61],[-84.4,42.61],[-84.4,42.6]]]";
        string Land(string name) => $$$"""
            {"type":"FeatureCollection","features":[{"type":"Feature","properties":{"property":"fern","propertyName":"{{{name}}}","parcel":"fern-1","parcelName":"One","state":"MI","countyFips":"26065"},"geometry":{"type":"Polygon","coordinates":{{{square}}}}}]}
            """;
        await machine.ImportAsync("/api/imports/parcels", Land("Fern Hollow"));

        var preview = await SendAsync(consultant, Land("Fern Glen"));

        preview.ShouldContain("Properties: 0 new, 1 changed, 0 as they are. Parcels: 0 new, 0 changed, 1 as they are.");
        preview.ShouldContain("name: Fern Hollow → Fern Glen");
    }

    [Theory]
    [InlineData("B,nowhere,cleanup,2,acres,2,,,,", "nowhere")]
    [InlineData("B,,dynamite,2,acres,2,,,,", "dynamite")]
    public async Task File_WithFaults_IsRefused_WithTheLine(string row, string value)
    {
        var (machine, consultant, _) = await GivenAsync();

        var answer = await SendAsync(consultant, $"{Header}\n{row}\n");

        answer.ShouldContain("nothing was stored");
        answer.ShouldContain($">{value}<");
        (await machine.ReadAsync("/api/tasks")).GetArrayLength().ShouldBe(0);
    }

    [Fact]
    public async Task NoFile_IsSaid() =>
        (await SendAsync((await GivenAsync()).Consultant, null)).ShouldContain("Choose a file: parcels as GeoJSON, or tasks as CSV.");

    private static async Task<string> SendAsync(HttpClient client, string? file)
    {
        using var form = new MultipartFormDataContent
        {
            { new StringContent(await TokenAsync(client)), "__RequestVerificationToken" },
        };
        if (file is not null)
            form.Add(new ByteArrayContent(Encoding.UTF8.GetBytes(file)), "file", "work.csv");
        return await AnswerAsync(client, form);
    }

    private static async Task<string> StoreAsync(HttpClient client, string preview)
    {
        using var form = new FormUrlEncodedContent(new Dictionary<string, string>
        {
            ["__RequestVerificationToken"] = await TokenAsync(client),
            ["content"] = Handed().Match(preview).Groups[1].Value,
            ["store"] = "true",
        });
        return await AnswerAsync(client, form);
    }

    private static async Task<string> AnswerAsync(HttpClient client, HttpContent form)
    {
        using var answer = await client.PostAsync("/import", form);
        answer.StatusCode.ShouldBe(HttpStatusCode.OK);
        return WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync());
    }

    private static async Task<string> TokenAsync(HttpClient client) =>
        Token().Match(await client.GetStringAsync("/import")).Groups[1].Value;

    private async Task<(HttpClient Machine, HttpClient Consultant, string Parcel)> GivenAsync()
    {
        var organization = await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}");
        var machine = await service.MachineAsync(organization);
        var (property, _) = await Land.CreateAsync(machine, -84.4, 42.6, "26065", "MI");
        var name = $"c.{Guid.NewGuid():N}@example.org";
        await service.AddPersonAsync(organization, name, Role.Consultant);
        var parcels = await machine.ReadAsync($"/api/properties/{property}/parcels");
        return (machine, (await service.SignInAsync(name)).Client, parcels[0].Text("key"));
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" type=\"hidden\" value=\"([^\"]+)\"")]
    private static partial Regex Token();

    [GeneratedRegex("name=\"content\" value=\"([^\"]+)\"")]
    private static partial Regex Handed();
}
