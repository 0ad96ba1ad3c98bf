using System.IO.Compression;
using WorkWindows.Feeds.Stations;

namespace WorkWindows.Feeds.Tests.Stations;

public class StationFaultTests
{
    private const string Heading = "USW00014922199902TMIN";
    private const string Good = "USC00368449,20040201,TMIN,-144,,,0,0700";

    [Theory]
    [InlineData("USW00014922199902TMIN", 29, "  100  X", "value of day 29", "100")]      // 1999 is no leap year
    [InlineData("USW00014922199904TMIN", 31, "  100  X", "value of day 31", "100")]
    [InlineData("USW00014922199902TMIN", 3, "  1O0  X", "value of day 3", "  1O0")]
    [InlineData("USW00014922199902TMIN", 3, "     X  ", "value of day 3", "     ")]
    [InlineData("USW00014922199902TMIN", 3, "  750  X", "TMIN", "750")]                  // °F in tenths, perhaps
    [InlineData("USW00014922199902WSF2", 3, "   -1  X", "WSF2", "-1")]
    [InlineData("USW00014922199902PRCP", 3, "   -1  X", "PRCP", "-1")]
    [InlineData("USW00014922199902PRCP", 3, "20001  X", "PRCP", "20001")]
    [InlineData("USW00014922199902SNWD", 3, "12001  X", "SNWD", "12001")]
    [InlineData("USW00014922199902RHMN", 3, "  101  X", "RHMN", "101")]                  // tenths of percent, perhaps
    [InlineData("USW00014922199913TMIN", 3, "  100  X", "month", "13")]
    [InlineData("USW0001492219 902TMIN", 3, "  100  X", "year", "19 9")]
    [InlineData("USW00014922199902tmin", 3, "  100  X", "element", "tmin")]
    public void Read_NamesWhatIsWrong_InAFixedWidthLine(
        string heading, int day, string group, string field, string value)
    {
        var import = StationText.Read(StationText.Dly("USW00014922199901TMAX"), StationText.Dly(heading, (day, group)));
        var fault = Assert.Single(import.Faults.Faults);
        Assert.Equal((2, field, value), (fault.Line, fault.Field, fault.Value));
        Assert.Null(import.Station);
    }

    [Theory]
    [InlineData("USC00368449,20040230,TMIN,-144,,,0,0700", "date", "20040230")]
    [InlineData("USC00368449,2004021,TMIN,-144,,,0,0700", "date", "2004021")]
    [InlineData("USC00368449,20050229,TMIN,-144,,,0,0700", "date", "20050229")]
    [InlineData("USC00368449,20040202,TMIN,-14.4,,,0,0700", "TMIN", "-14.4")]
    [InlineData("USC00368449,20040202,TMIN,,,,0,0700", "TMIN", "")]
    [InlineData("USC00368449,20040202,TMIN,-144,,XX,0,0700", "quality flag", "XX")]
    [InlineData("USC00368449,20040202,PRCP,0,PT,,0,0700", "measurement flag", "PT")]
    [InlineData("USC00368449,20040202,RHMN,255,,,0,0700", "RHMN", "255")]
    [InlineData("USC00368449,20040202,TMIN,-144", "line", "USC00368449,20040202,TMIN,-144")]
    [InlineData("USC00368450,20040202,TMIN,-144,,,0,0700", "station", "USC00368450")]
    [InlineData("a,20040202,TMIN,-144,,,0,0700", "station", "a")]
    [InlineData("USC00368449,20040201,TMIN,-140,,,0,0700", "TMIN", "2004-02-01")]
    public void Read_NamesWhatIsWrong_InACsvLine(string line, string field, string value)
    {
        var fault = Assert.Single(StationText.Read(Good, line).Faults.Faults);
        Assert.Equal((2, field, value), (fault.Line, fault.Field, fault.Value));
    }

    [Fact]
    public void Read_NamesBothLines_WhenADateIsRepeated() =>
        Assert.Equal(
            "line 3: TMIN '2004-02-01': each date and element once, and line 1 has it already",
            StationText.Read(Good, Good.Replace("TMIN", "TMAX"), Good.Replace("-144", "-150")).Faults.ToString());

    [Fact]
    public void Read_ReportsARepeatedMonthOnce() =>
        Assert.Equal(
            "line 2: TMIN '1999-02-01': each date and element once, and line 1 has it already",
            StationText.Read(StationText.Dly(Heading), StationText.Dly(Heading)).Faults.ToString());

    [Fact]
    public void Read_RefusesASecondStation() =>
        Assert.Equal(
            "line 2: station 'USW00014923': one station a file, and this one began with USW00014922",
            StationText.Read(StationText.Dly(Heading), StationText.Dly("USW00014923199903TMIN")).Faults.ToString());

    [Fact]
    public void Read_SaysThatTheLastLineIsCut()
    {
        var whole = StationText.Dly(Heading);
        var cut = whole.Replace("02TMIN", "03TMIN")[..100];
        var fault = Assert.Single(StationText.ReadText($"{whole}\n{cut}").Faults.Faults);
        Assert.Equal((2, "line", "100 characters"), (fault.Line, fault.Field, fault.Value));
        Assert.Equal("269 characters: the line is cut", fault.Accepted);
    }

    [Fact]
    public void Read_RefusesALastLineThatMayLackItsQualityFlag() =>
        Assert.Equal(1, StationText.ReadText(StationText.Dly(Heading)[..266]).Faults.Faults.Single().Line);

    [Fact]
    public void Read_SaysThatTheFileEndsInsideACsvLine() =>
        Assert.EndsWith("; the file ends inside this line",
            StationText.ReadText($"{Good}\nUSC00368449,20040202,TM").Faults.Faults.Single().Accepted,
            StringComparison.Ordinal);

    [Theory]
    [InlineData("stations/cary/cary_met_data_daily.csv")]
    [InlineData("stations/station-coordinates.txt")]
    [InlineData("geo/hardiness-zones/ophz_MI.geojson")]
    [InlineData("feeds/forecast/gridpoints/ALY/71,67.json")]
    public void Read_SaysWhatAStationFileIs_WhenGivenAnotherFile(string path)
    {
        using var stream = File.OpenRead(ProjectFiles.Reference(path));
        var fault = Assert.Single(StationFile.Read(stream).Faults.Faults);
        Assert.Equal((1, "file"), (fault.Line, fault.Field));
        Assert.StartsWith("a GHCN-Daily station file", fault.Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_RefusesAnEmptyFile()
    {
        var fault = Assert.Single(StationText.ReadText("").Faults.Faults);
        Assert.Equal((null, "file", "empty"), (fault.Line, fault.Field, fault.Value));
    }

    [Theory]
    [InlineData(200_000)]
    [InlineData(15)]
    public void Read_RefusesACutGzipFile(int bytes)
    {
        var whole = File.ReadAllBytes(ProjectFiles.Reference("stations/dly/USW00014922.full.dly.gz"));
        var import = StationFile.Read(new MemoryStream(whole[..bytes]));
        Assert.Equal("a whole gzip file: this one is cut or damaged", Assert.Single(import.Faults.Faults).Accepted);
    }

    [Fact]
    public void Read_RefusesAGzipFileThatIsDamaged()
    {
        var packed = new MemoryStream();
        using (var packing = new GZipStream(packed, CompressionLevel.Optimal, leaveOpen: true))
            packing.Write(System.Text.Encoding.ASCII.GetBytes(string.Concat(Enumerable.Repeat($"{Good}\n", 100))));
        var bytes = packed.ToArray();
        bytes[^10] ^= 0x55;
        Assert.False(StationFile.Read(new MemoryStream(bytes)).IsAccepted);
    }

    [Fact]
    public void Read_StopsListingAtAHundredFaults_AndCountsTheRest()
    {
        var faults = StationText.Read([Good, .. Enumerable.Repeat("USC00368449,20040230,TMIN,-144,,,0,", 130)]).Faults;
        Assert.Equal((100, 30), (faults.Faults.Length, faults.More));
        Assert.EndsWith("\nand 30 more", faults.ToString(), StringComparison.Ordinal);
    }
}
