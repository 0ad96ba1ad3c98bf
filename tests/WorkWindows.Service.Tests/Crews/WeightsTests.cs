using System.Net;
using Shouldly;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;

namespace WorkWindows.Service.Tests.Crews;

public sealed class WeightsTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private static readonly string[] FirstAid = ["First aid"];

    [Fact]
    public async Task Weights_AreAsUsual_UntilTheyAreSet_AndAgainWhenTheyAreTakenOff()
    {
        var client = await service.MachineAsync(await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}"));

        var usual = await client.ReadAsync("/api/weights");
        var set = await client.PutAsync("/api/weights", new
        {
            hingeLargestDbhIn = 7,
            practices = new[] { new { practice = "hinge-cut", points = new { acres = 80 }, certificates = FirstAid } },
        });
        var off = await client.PutAsync("/api/weights", new { });

        usual.GetProperty("hingeLargestDbhIn").GetDouble().ShouldBe(8);
        set.GetProperty("hingeLargestDbhIn").GetDouble().ShouldBe(7);
        set.GetProperty("practices")[0].GetProperty("certificates")[0].GetString().ShouldBe("First aid");
        off.GetRawText().ShouldBe(usual.GetRawText());
    }

    [Theory]
    [InlineData("pocketLeastAcres", 0.75, "pocketLeastAcres")]
    [InlineData("pocketMostAcres", 0.1, "pocketLeastAcres")]
    [InlineData("cutHighestFt", 0.75, "cutLowestFt")]
    public async Task Range_ThatEndsBeforeItBegins_IsRefused_AlsoWhereOneEndIsTheUsualOne(
        string field, double value, string named)
    {
        var client = await service.MachineAsync(await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}"));

        var problem = await client.RefusedAsync(
            HttpMethod.Put, "/api/weights", new Dictionary<string, double> { [field] = value },
            HttpStatusCode.BadRequest);

        problem.Error(named).ShouldContain("at most the other end");
    }

    [Fact]
    public async Task Weights_AreRefusedWhole_WithEachFault()
    {
        var client = await service.MachineAsync(await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}"));

        var problem = await client.RefusedAsync(HttpMethod.Put, "/api/weights", new
        {
            roadFactor = 0.5,
            hingeEasyDbhIn = 9,
            practices = new[] { new { practice = "dynamite", points = new { acres = -1 } } },
        }, HttpStatusCode.BadRequest);

        problem.Error("roadFactor").ShouldContain("from 1 to 5");
        problem.Error("hingeEasyDbhIn").ShouldContain("at most the other end, 8");
        problem.Error("practices[0].practice").ShouldContain("a key of the practice catalogue");
        problem.Error("practices[0].points.acres").ShouldContain("points from 0 to 100000");
    }

    [Fact]
    public async Task HingeLimits_OfTheOrganization_AreThoseOfItsAdvice()
    {
        var client = await service.MachineAsync(await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}"));
        var (_, parcel) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI", "sugar maple");
        var before = await client.ReadAsync($"/api/parcels/{parcel}/stand");

        await client.PutAsync("/api/weights", new { hingeLargestDbhIn = 15, hingeEasyDbhIn = 15 });

        before.GetProperty("stems")[0].GetProperty("hinge").Text("fit").ShouldNotBe("fits");
        (await client.ReadAsync($"/api/parcels/{parcel}/stand")).GetProperty("stems")[0].GetProperty("hinge").Text("fit").ShouldBe("fits");
    }

    [Fact]
    public async Task Species_AreHingedAsTheOrganizationSays()
    {
        var client = await service.MachineAsync(await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}"));
        var (_, parcel) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI", "sugar maple");

        await client.PutAsync("/api/weights", new Dictionary<string, object>
        {
            ["hingeSpecies"] = new Dictionary<string, string> { ["sugar maple"] = "no" },
        });
        var problem = await client.RefusedAsync(HttpMethod.Put, "/api/weights", new Dictionary<string, object>
        {
            ["hingeSpecies"] = new Dictionary<string, string> { ["sugar mapel"] = "no" },
        }, HttpStatusCode.BadRequest);

        (await client.ReadAsync($"/api/parcels/{parcel}/stand")).GetProperty("stems")[0].GetProperty("hinge").Text("says")
            .ShouldBe("By your own list it is not hinged.");
        problem.Error("hingeSpecies").ShouldContain("names of the species catalogue");
    }
}
