using System.Text.Json;
using WorkWindows.Engine.Land;
using WorkWindows.Feeds.Portfolio;

namespace WorkWindows.Feeds.Tests.Portfolio;

public class ParcelPartsTests
{
    [Fact]
    public void Read_GivesWhatIsThere()
    {
        var parts = Read("""
            {"geometry": {"type": "Point", "coordinates": [-77.9, 40.8]}, "flags": ["wet-ground"],
             "stand": [{"species": "red maple", "dbhMinIn": 2, "dbhMaxIn": 8, "stemsPerAcre": 210}]}
            """);

        Assert.True(parts.Faults.IsEmpty);
        Assert.Equal((new ParcelSite(null, 40.8, -77.9, null), "America/New_York"), (parts.Site, parts.PositionZone));
        Assert.Equal([SiteFlag.WetGround], parts.Flags);
        Assert.Equal("red maple", Assert.Single(parts.Stand).Species.Name);
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("""{"geometry": null, "flags": null, "stand": null}""")]
    public void Read_IsEmpty_WhereNothingIsSaid(string json)
    {
        var parts = Read(json);

        Assert.True(parts.Faults.IsEmpty);
        Assert.Equal((null, null, null), (parts.Site, parts.PositionZone, parts.Flags));
        Assert.Empty(parts.Stand);
    }

    [Fact]
    public void Read_NamesEveryFault() => Assert.Equal(
        ["geometry", "flags", "stand[0].species"],
        Read("""
            {"geometry": {"type": "Point", "coordinates": [-40, 35]}, "flags": ["noisy"],
             "stand": [{"species": "money tree", "dbhMinIn": 2, "dbhMaxIn": 8, "stemsPerAcre": 210}]}
            """).Faults.Faults.Select(fault => fault.Field));

    private static ParcelParts Read(string json) => ParcelParts.Read(JsonSerializer.Deserialize<JsonElement>(json));
}
