using System.Net;
using System.Text.Json;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Tests;

namespace WorkWindows.Service.Tests.Tasks;

public sealed class TaskImportTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Address = "/api/imports/tasks";
    private const string Header =
        "task,parcel,practice,quantity,unit,crewSize,deadline,scheduledOn,prerequisites,crewLead\n";

    private static readonly string Parcels = File.ReadAllText(
        Path.Combine(ProjectFiles.Root, "docs/samples/parcels.geojson"));
    private static readonly string Sample = File.ReadAllText(Path.Combine(ProjectFiles.Root, "docs/samples/tasks.csv"));

    [Fact]
    public async Task Import_CreatesOnce_AndChangesNothingWhenRepeated()
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        await service.AddPersonAsync(organization, "lead@example.org", Role.CrewLead);
        var client = await service.MachineAsync(organization);
        await client.ImportAsync("/api/imports/parcels", Parcels);

        Counts(await client.ImportAsync(Address, Sample)).ShouldBe((8, 0, 0));
        Counts(await client.ImportAsync(Address, Sample)).ShouldBe((0, 0, 8));
        Counts(await client.ImportAsync(Address, Sample.Replace("tie-down,180", "tie-down,200"))).ShouldBe((0, 1, 7));
        Counts(await client.ImportAsync(Address, Sample.Replace(",,mill-fell,", ",,,"))).ShouldBe((0, 2, 6));
    }

    [Fact]
    public async Task Import_StoresNothing_AndNamesEveryFault()
    {
        var client = await WithParcelsAsync();

        var problem = await client.ImportAsync(
            Address,
            Header + "good,fox-north,cleanup,2,hours,2,,,,\nbad,nowhere,dynamite,-2,barrels,0,2026-02-30,,,\n",
            HttpStatusCode.UnprocessableEntity);

        problem.Faults().Order().ShouldBe(
        [
            "3 bad crewSize 0", "3 bad deadline 2026-02-30", "3 bad parcel nowhere", "3 bad practice dynamite",
            "3 bad quantity -2", "3 bad unit barrels",
        ]);
        (await client.ReadAsync("/api/tasks")).GetArrayLength().ShouldBe(0);
    }

    [Fact]
    public async Task Import_NamesWhatTheFileCannotKnow()
    {
        var client = await WithParcelsAsync();
        await client.ImportAsync(
            Address, Header + "a,fox-north,cleanup,2,hours,2,,,,\nb,fox-north,cleanup,2,hours,2,,,a,\n");

        var problem = await client.ImportAsync(
            Address, Header + "a,fox-north,cleanup,2,hours,2,,,b,nobody@example.org\n", HttpStatusCode.UnprocessableEntity);

        problem.Faults().ShouldBe(["2 a crewLead nobody@example.org", "2 a prerequisites a after b after a"]);
    }

    private static (int Created, int Updated, int Unchanged) Counts(JsonElement counts) => (
        counts.GetProperty("created").GetInt32(), counts.GetProperty("updated").GetInt32(),
        counts.GetProperty("unchanged").GetInt32());

    private async Task<HttpClient> WithParcelsAsync()
    {
        var client = await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));
        await client.ImportAsync("/api/imports/parcels", Parcels);
        return client;
    }
}
