using System.Text;
using Shouldly;
using WorkWindows.Feeds.Portfolio;

namespace WorkWindows.Feeds.Tests.Portfolio;

public sealed class DriveTimeFileTests
{
    private static readonly HashSet<string> Places = ["cedar", "mill", "north crew"];

    [Fact]
    public void Read_TakesEachWayByItself() => Read("from,to,minutes\ncedar,mill,25\nmill,cedar,31.5\n").Rows
        .ShouldBe([new(2, "cedar", "mill", 25), new(3, "mill", "cedar", 31.5)]);

    [Theory]
    [InlineData("from,to,minutes\n", "1 file 'no drives': at least one drive after the first line")]
    [InlineData("from,to\ncedar,mill\n", "1 column 'absent': a column minutes")]
    [InlineData("from,to,minutes\ncedar,nowhere,5\n", "2 to 'nowhere': the key of a property or the name of a crew with a base")]
    [InlineData("from,to,minutes\ncedar,mill,1441\n", "2 minutes '1441': minutes from 0 to 1440 with a decimal point, such as 42.5")]
    [InlineData("from,to,minutes\ncedar,mill,5\ncedar,mill,6\n", "3 to 'mill': each drive once")]
    public void Read_NamesTheLineTheFieldAndWhatIsAccepted(string file, string fault)
    {
        var read = Read(file);

        read.Rows.ShouldBeEmpty();
        read.Faults.Faults.Select(one => $"{one.Line} {one.Field} '{one.Value}': {one.Accepted}").ShouldBe([fault]);
    }

    private static DriveTimes Read(string file) => DriveTimeFile.Read(new MemoryStream(Encoding.UTF8.GetBytes(file)), Places);
}
