using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Tests.Days;

public class TriTests
{
    // y holds, n fails, - not known. Kleene's strong logic: Kleene, Introduction to Metamathematics, 1952, section 64
    // (from memory).
    [Theory]
    [InlineData("yyynnn---", "yn-yn-yn-", "yn-nnn-n-")]
    public void And_FollowsKleene(string left, string right, string expected) =>
        Assert.Equal(expected, Text(Tri(left) & Tri(right)));

    [Theory]
    [InlineData("yyynnn---", "yn-yn-yn-", "yyyyn-y--")]
    public void Or_FollowsKleene(string left, string right, string expected) =>
        Assert.Equal(expected, Text(Tri(left) | Tri(right)));

    [Fact]
    public void Not_KeepsTheUnknown() => Assert.Equal("ny-", Text(!Tri("yn-")));

    [Theory]
    [InlineData("nyyyyn", "nnnyyn")]   // the third day completes the run, the fourth goes on
    [InlineData("nyynyy", "nnnnnn")]   // a break starts the count again
    [InlineData("nyy-yy", "nnn---")]   // a gap could be a third cold night, and could have ended the run
    [InlineData("ny-n--", "nnnnnn")]   // one failing day within three settles it
    [InlineData("yyyy", "--yy")]       // before the span nothing is known
    public void Run_EndsOnTheDayThatCompletesIt(string each, string expected) =>
        Assert.Equal(expected, Text(Tri(each).Run(3)));

    private static Tri Tri(string days) =>
        new(DayBits.Where(days.Length, d => days[d] == 'y'), DayBits.Where(days.Length, d => days[d] == 'n'));

    private static string Text(Tri tri) =>
        string.Concat(Enumerable.Range(0, tri.Length).Select(day => tri[day] switch
        {
            Truth.Holds => 'y',
            Truth.Fails => 'n',
            _ => '-',
        }));
}
