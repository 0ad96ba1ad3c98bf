using System.Net;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;
using WorkWindows.Service.Tests.Storage;

namespace WorkWindows.Service.Tests.Windows;

public sealed class PropertySeasonTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Season_OfAProperty_ShowsAllItsWork_InPicturesAndInWords()
    {
        var organization = await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}");
        var client = await service.MachineAsync(organization);
        var (property, parcel) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI", "northern red oak");
        await Land.TaskAsync(client, parcel, "tie-down");
        await Land.TaskAsync(client, parcel, "overstory-felling");
        var done = await Land.TaskAsync(client, parcel, "cleanup");
        await client.PutAsync($"/api/tasks/{done.Id()}/completion", new { completedOn = "2025-02-10" });

        var name = $"c.{Guid.NewGuid():N}@example.org";
        await service.AddPersonAsync(organization, name, Role.Consultant);
        var consultant = (await service.SignInAsync(name)).Client;

        var page = WebUtility.HtmlDecode(await consultant.GetStringAsync($"/properties/{property}/season"));
        var calls = await service.Calls.OfAsync(() => consultant.GetStringAsync($"/properties/{property}/season"));

        page.ShouldContain("Tie-down of hinged stems, Slope: ");
        page.ShouldContain("Overstory felling, Slope: ");
        page.ShouldNotContain("Cleanup");
        // The season is of 426 days: each is a link and says what it is and why.
        page.Split("<title>").Length.ShouldBeGreaterThan(2 * 426);
        page.ShouldContain("2025: closed, ");
        page.ShouldContain(": unknown, ");
        calls.ShouldBeLessThanOrEqualTo(DatabaseCalls.Most);
    }

    [Fact]
    public async Task Season_OfOthersLand_IsNotThere()
    {
        var organization = await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}");
        var (property, _) = await Land.CreateAsync(await service.MachineAsync(organization), -84.4, 42.6, "26065", "MI");
        var name = $"o.{Guid.NewGuid():N}@example.org";
        await service.AddPersonAsync(organization, name, Role.Landowner);
        var stranger = await service.MachineAsync(await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}"));

        foreach (var client in new[] { (await service.SignInAsync(name)).Client, stranger })
            (await client.GetAsync($"/properties/{property}/season")).StatusCode.ShouldBe(HttpStatusCode.NotFound);
    }
}
