using System.Net;
using Shouldly;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;

namespace WorkWindows.Service.Tests.Tasks;

/// <summary>
/// Michigan Administrative Code R 408.15113(d) and (f): nobody fells or skids alone. 29 CFR 1910.266(d)(6)(iii): within
/// sight or hearing of another worker.
/// </summary>
public sealed class PlannedAloneTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Task_IsNotPlannedForADay_ForOnePersonAlone_WhereTheLawForbidsIt()
    {
        var (client, parcel) = await OpenAsync();

        var problem = await client.RefusedAsync(
            HttpMethod.Post, "/api/tasks", Body(parcel, "hinge-cut", 1, "2025-03-10"), HttpStatusCode.UnprocessableEntity);

        problem.Text("detail").ShouldContain("must not be done alone: Michigan forbids working alone when felling");
        (problem.Text("field"), problem.Text("rule")).ShouldBe(("crewSize", "mi.not-alone"));
        problem.Text("source").ShouldContain("R 408.15113");
        (await client.ReadAsync("/api/tasks")).GetArrayLength().ShouldBe(0);
    }

    [Theory]
    [InlineData("hinge-cut", 1, null)]          // no day is planned yet
    [InlineData("hinge-cut", 2, "2025-03-10")]
    [InlineData("tie-down", 1, "2025-03-10")]
    public async Task Task_IsPlanned_WhereNothingForbidsIt(string practice, int crew, string? day)
    {
        var (client, parcel) = await OpenAsync();

        await client.CreateAsync("/api/tasks", Body(parcel, practice, crew, day));
    }

    [Fact]
    public async Task Task_KeepsItsDay_WhenItsCrewShrinksToOne()
    {
        var (client, parcel) = await OpenAsync();
        var task = await client.CreateAsync("/api/tasks", Body(parcel, "hinge-cut", 2, "2025-03-10"));

        await client.RefusedAsync(HttpMethod.Put, $"/api/tasks/{task.Id()}", Body(parcel, "hinge-cut", 1, "2025-03-10"),
            HttpStatusCode.UnprocessableEntity);

        (await client.ReadAsync("/api/tasks"))[0].Text("crewSize").ShouldBe("2");
    }

    private async Task<(HttpClient Client, Guid Parcel)> OpenAsync()
    {
        var client = await service.MachineAsync(await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}"));
        var (_, parcel) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI");
        return (client, parcel);
    }

    private static object Body(Guid parcel, string practice, int crew, string? day) =>
        new { key = "k", parcelId = parcel, practice, crewSize = crew, scheduledOn = day };
}
