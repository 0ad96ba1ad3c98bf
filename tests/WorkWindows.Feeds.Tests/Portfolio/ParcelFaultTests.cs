using System.Text;
using WorkWindows.Feeds.Portfolio;
using static WorkWindows.Feeds.Tests.Portfolio.ParcelText;

namespace WorkWindows.Feeds.Tests.Portfolio;

public class ParcelFaultTests
{
    [Theory]
    [InlineData("countyFips", "42027", "countyFips", "42027")]                  // a number loses leading zeros
    [InlineData("countyFips", "\"2606\"", "countyFips", "2606")]
    [InlineData("countyFips", "\"26065\"", "countyFips", "26065")]              // Michigan's, and the state is PA
    [InlineData("state", "\"pa\"", "state", "pa")]
    [InlineData("state", "\"Pennsylvania\"", "state", "Pennsylvania")]
    [InlineData("property", "\"\"", "property", "")]
    [InlineData("landownerEmail", "\"ada at example\"", "landownerEmail", "ada at example")]
    [InlineData("timeZone", "\"Eastern\"", "timeZone", "Eastern")]
    [InlineData("flags", "[\"oakWiltNearby\"]", "flags", "oakWiltNearby")]
    [InlineData("flags", "\"wet-ground\"", "flags", "wet-ground")]
    [InlineData("parcelName", "\"a\\u0000b\"", "parcelName", "a\0b")]
    [InlineData("elevationM", "12000", "elevationM", "12000")]                  // feet, surely
    [InlineData("elevationM", "\"300\"", "elevationM", "300")]
    [InlineData("stand", "[]", "stand", "[]")]
    [InlineData("stand", "[{\"species\": \"red maple\", \"dbhMinIn\": 4, \"dbhMaxIn\": 8, \"stemsPerAcre\": -1}]",
        "stand[0].stemsPerAcre", "-1")]
    [InlineData("stand", "[{\"species\": \"red maple\", \"dbhMinIn\": 8, \"dbhMaxIn\": 4, \"stemsPerAcre\": 10}]",
        "stand[0].dbhMaxIn", "4")]
    [InlineData("stand", "[{\"species\": \"money tree\", \"dbhMinIn\": 4, \"dbhMaxIn\": 8, \"stemsPerAcre\": 10}]",
        "stand[0].species", "money tree")]
    public void Read_NamesLineParcelFieldAndValue(string property, string json, string field, string value)
    {
        var import = Read(Feature("south"), Feature().With(property, json));
        var fault = Assert.Single(import.Faults.Faults);
        Assert.Equal((4, "north", field, value), (fault.Line, fault.Item, fault.Field, fault.Value));
        Assert.Empty(import.Rows);
    }

    [Theory]
    [InlineData("property")]
    [InlineData("parcel")]
    [InlineData("countyFips")]
    [InlineData("state")]
    public void Read_SaysWhichRequiredPropertyIsAbsent(string property)
    {
        var fault = Assert.Single(Read(Feature().Without(property)).Faults.Faults);
        Assert.Equal((property, "absent"), (fault.Field, fault.Value));
    }

    [Fact]
    public void Read_ListsTheSpecies_WhenOneIsUnknown() =>
        Assert.Contains("northern red oak, black oak, scarlet oak", Read(Feature().With("stand",
            """[{"species": "money tree", "dbhMinIn": 4, "dbhMaxIn": 8, "stemsPerAcre": 10}]""")).Faults.ToString(),
            StringComparison.Ordinal);

    [Fact]
    public void Read_NamesTheCrossing_OfABoundaryThatCrossesItself() =>
        Assert.Equal(
            "line 3: north: geometry '-77.895 40.805': a boundary that neither crosses nor overlaps itself "
            + "(Self-intersection at this place)",
            Read(Feature().At("""
                {"type": "Polygon", "coordinates":
                  [[[-77.90, 40.80], [-77.89, 40.81], [-77.89, 40.80], [-77.90, 40.81], [-77.90, 40.80]]]}
                """)).Faults.ToString());

    [Theory]
    [InlineData("""{"type": "Point", "coordinates": [40.8, -77.9]}""", "40.8 -77.9",
        "longitude before latitude: these look swapped")]
    [InlineData("""{"type": "Point", "coordinates": [-77.9, 140.8]}""", "-77.9 140.8",
        "longitude from -180 to 180, then latitude from -90 to 90")]
    [InlineData("""{"type": "Point", "coordinates": [-60, 40]}""", "-60 40",
        "a place in the United States; this one lies in the sea")]
    [InlineData("""{"type": "Point", "coordinates": [-75.7, 45.42]}""", "-75.7 45.42",
        "a place in the United States; this one lies in the zone America/Toronto")]
    public void Read_RefusesAPositionThatIsNotInTheUnitedStates(string geometry, string value, string accepted)
    {
        var fault = Assert.Single(Read(Feature().At(geometry)).Faults.Faults);
        Assert.Equal(("geometry", value, accepted), (fault.Field, fault.Value, fault.Accepted));
    }

    [Theory]
    [InlineData("null")]
    [InlineData("{}")]
    [InlineData("""{"type": "LineString", "coordinates": [[-77.9, 40.8], [-77.8, 40.8]]}""")]
    [InlineData("""{"type": "Polygon", "coordinates": []}""")]
    // A ring that is not closed, and one of three positions.
    [InlineData("""{"type": "Polygon", "coordinates": [[[-77.90, 40.80], [-77.89, 40.80], [-77.89, 40.81]]]}""")]
    [InlineData("""{"type": "Polygon", "coordinates": [[[-77.90, 40.80], [-77.89, 40.80], [-77.90, 40.80]]]}""")]
    [InlineData("""{"type": "Point", "coordinates": ["-77.9", "40.8"]}""")]
    [InlineData("""{"type": "Point", "coordinates": [-77.9]}""")]
    public void Read_SaysWhichGeometriesItTakes(string geometry)
    {
        var fault = Assert.Single(Read(Feature().At(geometry)).Faults.Faults);
        Assert.Equal("geometry", fault.Field);
        Assert.StartsWith("a Polygon, MultiPolygon or Point in WGS 84", fault.Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_CollectsEveryFaultOfEveryFeature()
    {
        var faults = Read(
            Feature().With("state", "\"XX\"").With("flags", "[\"windy\"]").At("null"),
            Feature("south").Without("property")).Faults.Faults;
        Assert.Equal(
            [(3, "state"), (3, "flags"), (3, "geometry"), (4, "property")],
            faults.Select(fault => (fault.Line!.Value, fault.Field)));
    }

    [Fact]
    public void Read_NamesBothLines_WhenAParcelIsRepeated() =>
        Assert.Equal(
            "line 4: north: parcel 'north': a key of its own: the parcel on line 3 has it already",
            Read(Feature(), Feature()).Faults.ToString());

    [Fact]
    public void Read_RefusesParcels_ThatDisagreeOnTheirProperty() =>
        Assert.Equal(
            "line 4: south: landowner 'Ben Example': 'Ada Example', as property fox-hollow has it on line 3",
            Read(Feature().With("landowner", "\"Ada Example\""), Feature("south").With("landowner", "\"Ben Example\""),
                Feature("west")).Faults.ToString());

    [Theory]
    [InlineData("", 1, "file")]
    [InlineData("[]", 1, "file")]
    [InlineData("{\"type\": \"FeatureCollection\",\n\"features\": [\n", 3, "file")]
    [InlineData("{\"type\": \"Feature\", \"features\": []}", 1, "type")]
    [InlineData("{\"type\": \"FeatureCollection\"}", 1, "features")]
    [InlineData("{\"type\": \"FeatureCollection\", \"features\": []}", 1, "features")]
    [InlineData("task,parcel,practice\n", 1, "file")]
    [InlineData("{\"type\": \"\\ud800\", \"features\": []}", null, "file")]
    public void Read_SaysWhatAParcelFileIs(string text, int? line, string field)
    {
        var fault = Assert.Single(ReadText(text).Faults.Faults);
        Assert.Equal((line, field), (fault.Line, fault.Field));
    }

    [Fact]
    public void Read_RefusesAnotherReferenceSystem()
    {
        const string Crs = """{"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::26916"}}""";
        var fault = Assert.Single(ReadText(
            Collection(Feature()).Replace("\"features\"", $"\"crs\": {Crs}, \"features\"")).Faults.Faults);
        Assert.Equal(("crs", "urn:ogc:def:crs:EPSG::26916"), (fault.Field, fault.Value));
    }

    [Fact]
    public void Read_NamesTheLineOfABadByte()
    {
        var latin1 = Encoding.Latin1.GetBytes("{\"type\": \"FeatureCollection\",\n\"name\": \"Façade\"}");
        Assert.Equal(
            "line 2: encoding 'byte 0xE7': UTF-8, with or without a byte order mark: save the file as UTF-8",
            ParcelFile.Read(new MemoryStream(latin1)).Faults.ToString());
    }
}
