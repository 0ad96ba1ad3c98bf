using System.Text;
using NetTopologySuite.Geometries;
using WorkWindows.Engine.Land;
using WorkWindows.Feeds.Portfolio;
using static WorkWindows.Feeds.Tests.Portfolio.ParcelText;

namespace WorkWindows.Feeds.Tests.Portfolio;

public class ParcelFileTests
{
    [Fact]
    public void Read_GivesEveryField()
    {
        var row = Assert.Single(Read(Feature()
            .With("propertyName", "\"Fox Hollow\"")
            .With("parcelName", "\" North slope \"")
            .With("landowner", "\"Ada Example\"")
            .With("landownerEmail", "\"ada@example.org\"")
            .With("elevationM", "356.5")
            .With("flags", "[\"oak-wilt-nearby\", \"quiet-on-deer-openers\"]")
            .With("stand", """
                [{"species": "Northern red oak", "dbhMinIn": 10, "dbhMaxIn": 14, "stemsPerAcre": 22.5},
                 {"species": "quaking aspen", "dbhMinIn": 4, "dbhMaxIn": 4, "stemsPerAcre": 120}]
                """)).Rows);
        Assert.Equal(
            ("fox-hollow", "Fox Hollow", "north", "North slope", "Ada Example", "ada@example.org", "42027", "PA"),
            (row.Property, row.PropertyName, row.Parcel, row.ParcelName, row.Landowner, row.LandownerEmail,
                row.CountyFips, row.State));
        Assert.Equal(("America/New_York", false, 356.5), (row.TimeZone, row.IsTimeZoneGiven, row.ElevationM));
        Assert.Equal([SiteFlag.OakWiltNearby, SiteFlag.QuietOnDeerOpeners], row.Flags);
        Assert.Equal(
            [
                new StandRow(new("northern red oak", SpeciesGroup.RedOak), 10, 14, 22.5),
                new StandRow(new("trembling aspen", SpeciesGroup.Aspen), 4, 4, 120),
            ],
            row.Stand);
    }

    [Fact]
    public void Read_LeavesEmpty_WhatAFeatureDoesNotGive()
    {
        var row = Assert.Single(Read(Feature().With("landowner", "null").With("OBJECTID", "17")).Rows);
        Assert.Equal((null, null, null, null), (row.PropertyName, row.ParcelName, row.Landowner, row.LandownerEmail));
        Assert.Null(row.Flags);
        Assert.Null(row.ElevationM);
        Assert.Empty(row.Stand);
    }

    [Fact]
    public void Read_MeasuresTheBoundary_AndTakesAPointInside()
    {
        var site = Assert.Single(Read(Feature()).Rows).Site;
        // 0.01° by 0.01° at 40.805° N: 1110.4 m by 844.2 m, from memory of lengths of a degree.
        Assert.Equal(937_400, site.AreaM2!.Value, 500.0);
        Assert.True(site.Boundary!.Contains(new Point(site.LongitudeDeg, site.LatitudeDeg)));
    }

    [Fact]
    public void Read_TakesAPoint()
    {
        var site = Assert.Single(Read(Feature().At("""{"type": "Point", "coordinates": [-77.9, 40.8]}""")).Rows).Site;
        Assert.Equal(new ParcelSite(null, 40.8, -77.9, null), site);
    }

    [Fact]
    public void Read_TakesSeveralParts()
    {
        var site = Assert.Single(Read(Feature().At("""
            {"type": "MultiPolygon", "coordinates": [
              [[[-77.90, 40.80], [-77.89, 40.80], [-77.89, 40.81], [-77.90, 40.80]]],
              [[[-77.80, 40.80], [-77.79, 40.80], [-77.79, 40.81], [-77.80, 40.80]]]]}
            """)).Rows).Site;
        Assert.Equal(2, site.Boundary!.NumGeometries);
    }

    [Theory]
    [InlineData("MI", "26071", -88.334, 46.098, null, "America/Menominee")]     // the county decides
    [InlineData("MN", "27031", -89.63, 48.00, null, "America/Chicago")]         // though the position alone misleads
    [InlineData("KY", "21067", -84.5, 38.05, null, "America/New_York")]         // a divided state: the position decides
    [InlineData("MI", "26071", -88.334, 46.098, "America/Detroit", "America/Detroit")]
    public void Read_GivesTheTimeZone(
        string state, string county, double longitudeDeg, double latitudeDeg, string? given, string zone)
    {
        var feature = Feature().With("state", $"\"{state}\"").With("countyFips", $"\"{county}\"")
            .At($"{{\"type\": \"Point\", \"coordinates\": [{longitudeDeg}, {latitudeDeg}]}}");
        Assert.Equal(zone, Assert.Single(
            Read(given is null ? feature : feature.With("timeZone", $"\"{given}\"")).Rows).TimeZone);
    }

    [Fact]
    public void Read_GivesTheLineOfEachFeature() =>
        Assert.Equal([3, 4], Read(Feature("north"), Feature("south")).Rows.Select(row => row.Line));

    [Fact]
    public void Read_AcceptsAByteOrderMark()
    {
        var text = Encoding.UTF8.GetBytes(Collection(Feature()));
        Assert.True(ParcelFile.Read(new MemoryStream([.. Encoding.UTF8.Preamble, .. text])).IsAccepted);
    }
}
