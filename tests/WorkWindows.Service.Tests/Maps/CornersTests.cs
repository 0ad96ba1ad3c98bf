using System.Text.Json;
using Shouldly;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Maps;

namespace WorkWindows.Service.Tests.Maps;

public sealed class CornersTests
{
    private const string TwoPartsAndAHole = """
        42.6, -84.4
        42.61, -84.4
        42.61, -84.38
        hole
        42.604, -84.398
        42.606, -84.398
        42.606, -84.396

        42.62, -84.4
        42.63, -84.4
        42.63, -84.39
        """;

    [Fact]
    public void Read_TurnsWrittenBack()
    {
        var faults = new FieldFaults();

        var geometry = Corners.Read(TwoPartsAndAHole, faults)!.Value;

        faults.Any.ShouldBeFalse();
        ParcelShape.Parts(geometry.GetRawText()).Select(part => part.Count).ShouldBe([2, 1]);
        Corners.Written(geometry.GetRawText(), 0, 0).ShouldBe(TwoPartsAndAHole.ReplaceLineEndings("\n"));
    }

    [Fact]
    public void Read_TakesOneCornerAsAPoint_LongitudeFirst() =>
        JsonSerializer.Serialize(Corners.Read("42.6, -84.4\n", new())).ShouldBe("""{"type":"Point","coordinates":[-84.4,42.6]}""");

    [Theory]
    [InlineData("", "three and more")]
    [InlineData("42.6, -84.4\n42.7, -84.4", "three and more")]
    [InlineData("42.6, -84.4\n42.6 N -84.4", "degrees north, a comma, degrees east, as in 42.61250, -84.40310 (line 2)")]
    [InlineData("hole\n42.6, -84.4", "(line 1)")]
    [InlineData("42.6, -84.4, 12", "(line 1)")]
    public void Read_NamesTheLine_AndTheAcceptedForm(string text, string says)
    {
        var faults = new FieldFaults();

        Corners.Read(text, faults).ShouldBeNull();

        faults.Errors["corners"].ShouldHaveSingleItem().ShouldContain(says);
    }
}
