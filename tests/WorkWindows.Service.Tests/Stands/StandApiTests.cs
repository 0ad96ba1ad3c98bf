using System.Net;
using System.Text.Json;
using Shouldly;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;

namespace WorkWindows.Service.Tests.Stands;

/// <summary>The worked stand of docs/rules/stands.md (60 red oak of 12 in, 120 red maple of 6, 40 basswood of 8 an acre).</summary>
public sealed class StandApiTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private static readonly object[] Worked =
    [
        new { species = "northern red oak", dbhMinIn = 11, dbhMaxIn = 13, stemsPerAcre = 60 },
        new { species = "red maple", dbhMinIn = 5, dbhMaxIn = 7, stemsPerAcre = 120 },
        new { species = "basswood", dbhMinIn = 7, dbhMaxIn = 9, stemsPerAcre = 40 },
    ];

    [Fact]
    public async Task Stand_IsToldNowAndAfterARemoval()
    {
        var (client, address) = await OpenAsync(Worked);

        var view = await client.ReadAsync($"{address}?felled=0&felled=100");

        var (now, after) = (view.GetProperty("now"), view.GetProperty("after"));
        (Number(now, "stemsPerAcre"), Number(after, "stemsPerAcre")).ShouldBe((220, 100));
        (Number(now, "basalAreaFt2PerAcre"), Number(after, "basalAreaFt2PerAcre")).ShouldBe((84.6, 61.1));
        (Number(now, "quadraticMeanDiameterIn"), Number(after, "quadraticMeanDiameterIn")).ShouldBe((8.4, 10.6));
        // Maples and basswoods of southern Michigan are a little narrower than at the reference place: 69.8 and 51.7 %.
        now.GetProperty("canopyCoverPercent").GetProperty("low").GetDouble().ShouldBe(69.8, 2);
        after.GetProperty("canopyCoverPercent").GetProperty("low").GetDouble().ShouldBe(51.7, 2);
        view.GetProperty("hoursPerAcre").GetProperty("high").GetDouble().ShouldBe(1.33, 0.005);
        view.GetProperty("stems").EnumerateArray().Select(stems => stems.GetProperty("hinge").Text("key"))
            .ShouldBe(["too-large", "brittle", "thin-only"]);
        view.GetProperty("findings").EnumerateArray().Single(one => one.Text("key") == "canopy").Text("fit").ShouldBe("fits");
    }

    [Fact]
    public async Task Canopy_ComesFirst_AsItStands()
    {
        var (client, address) = await OpenAsync(Worked);

        (await client.ReadAsync(address)).GetProperty("findings").EnumerateArray()
            .Single(one => one.Text("key") == "canopy").Text("says").ShouldContain("Remove canopy first.");
    }

    [Theory]
    [InlineData("?felled=101", "percent from 0 to 100")]
    [InlineData("?felled=-1", "percent from 0 to 100")]
    [InlineData("?felled=NaN", "percent from 0 to 100")]
    [InlineData("?felled=0&felled=0&felled=0&felled=0", "one number for each of the 3 rows")]
    public async Task Removal_IsRefused_WithWhatIsAccepted(string asked, string accepted)
    {
        var (client, address) = await OpenAsync(Worked);

        (await client.RefusedAsync(HttpMethod.Get, address + asked, null, HttpStatusCode.BadRequest))
            .Error("felled").ShouldContain(accepted);
    }

    private async Task<(HttpClient Client, string Address)> OpenAsync(object[] stand)
    {
        var client = await service.MachineAsync(await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}"));
        var key = Guid.NewGuid().ToString("N");
        var property = await client.CreateAsync("/api/properties", new
        {
            key,
            name = $"Woods {key}",
            countyFips = "26161",
            state = "MI",
            parcel = new { key, name = "Slope", geometry = Land.Square(-83.7, 42.3), stand },
        });
        var parcel = (await client.ReadAsync($"/api/properties/{property.Id()}/parcels"))[0].Id();
        return (client, $"/api/parcels/{parcel}/stand");
    }

    private static double Number(JsonElement row, string field) => row.GetProperty(field).GetDouble();
}
