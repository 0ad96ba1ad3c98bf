using System.Collections.Immutable;
using CsCheck;
using WorkWindows.Feeds.Portfolio;
using static WorkWindows.Feeds.Tests.Portfolio.TaskText;

namespace WorkWindows.Feeds.Tests.Portfolio;

public class TaskFaultTests
{
    private const string Good = "a,north,hinge-cut,12,acres,3,,,,";

    [Theory]
    [InlineData("b,west,hinge-cut,12,acres,3,,,,", "parcel", "west")]
    [InlineData("b,north,hinge,12,acres,3,,,,", "practice", "hinge")]
    [InlineData("b,north,hinge-cut,\"1,5\",acres,3,,,,", "quantity", "1,5")]
    [InlineData("b,north,hinge-cut,0,acres,3,,,,", "quantity", "0")]
    [InlineData("b,north,hinge-cut,-4,acres,3,,,,", "quantity", "-4")]
    [InlineData("b,north,hinge-cut,NaN,acres,3,,,,", "quantity", "NaN")]
    [InlineData("b,north,hinge-cut,12,hectares,3,,,,", "unit", "hectares")]
    [InlineData("b,north,hinge-cut,12,0,3,,,,", "unit", "0")]
    [InlineData("b,north,hinge-cut,12,acres,0,,,,", "crewSize", "0")]
    [InlineData("b,north,hinge-cut,12,acres,,,,,", "crewSize", "")]
    [InlineData("b,north,hinge-cut,12,acres,3,2026-02-29,,,", "deadline", "2026-02-29")]
    [InlineData("b,north,hinge-cut,12,acres,3,,02/16/2026,,", "scheduledOn", "02/16/2026")]
    [InlineData("b,north,hinge-cut,12,acres,3,,,clearing,", "prerequisites", "clearing")]
    [InlineData("b,north,hinge-cut,12,acres,3,,,,lead", "crewLead", "lead")]
    public void Read_NamesLineTaskFieldAndValue(string line, string field, string value)
    {
        var import = Read(Good, line);
        var fault = Assert.Single(import.Faults.Faults);
        Assert.Equal((3, "b", field, value), (fault.Line, fault.Item, fault.Field, fault.Value));
        Assert.Empty(import.Rows);
    }

    [Theory]
    [InlineData("practice", "one of: overstory-felling, hinge-cut, re-cut, tie-down, cleanup, ")]
    [InlineData("unit", "one of: acres, feet, hours, stems, trees")]
    [InlineData("deadline", "a date as yyyy-MM-dd, such as 2026-02-16, or nothing")]
    public void Read_SaysWhatIsAccepted(string field, string accepted) =>
        Assert.StartsWith(
            accepted,
            Read("b,north,dig,12,holes,3,soon,,,").Faults.Faults.Single(fault => fault.Field == field).Accepted,
            StringComparison.Ordinal);

    [Fact]
    public void Read_NamesBothLines_WhenATaskIsRepeated() =>
        Assert.Equal(
            "line 3: a: task 'a': a key of its own: the task on line 2 has it already",
            Read(Good, Good).Faults.ToString());

    [Theory]
    [InlineData("a:a", "a after a")]
    [InlineData("a:b b:c c:a", "a after b after c after a")]
    [InlineData("x:a a:b b:a", "a after b after a")]
    [InlineData("a:felling;b b:a c:a", "a after b after a")]
    public void Read_NamesTheCircle_OfPrerequisites(string tasks, string circle)
    {
        var fault = Assert.Single(Read(tasks.Split(' ').Select(task => task.Split(':'))
            .Select(task => $"{task[0]},north,hinge-cut,12,acres,3,,,{task[1]},")).Faults.Faults);
        Assert.Equal(("prerequisites", circle), (fault.Field, fault.Value));
    }

    [Fact]
    public void Read_FindsACircle_WheneverThereIsOne() =>
        Gen.Int[0, 9].Array[0, 3].Array[10].Sample(prerequisites =>
        {
            var lines = prerequisites.Select((keys, task) =>
                $"t{task},north,hinge-cut,12,acres,3,,,{string.Join(';', keys.Select(key => $"t{key}"))},");
            var reach = prerequisites.Select(keys => keys.ToHashSet()).ToArray();
            for (var round = 0; round < 10; round++)
            {
                foreach (var reached in reach)
                    reached.UnionWith(reached.SelectMany(key => reach[key]).ToList());
            }
            var hasCircle = reach.Select((reached, task) => reached.Contains(task)).Any(isBack => isBack);
            return Read(lines).IsAccepted != hasCircle;
        });

    [Fact]
    public void Read_FollowsALongChain() =>
        Assert.True(Read(Enumerable.Range(1, 20_000)
            .Select(task => $"t{task},north,hinge-cut,1,acres,1,,,{(task == 1 ? "" : $"t{task - 1}")},")).IsAccepted);

    [Theory]
    [InlineData("", null, "file", "empty")]
    [InlineData(Header, 1, "file", "no tasks")]
    [InlineData("task,parcel,practice,quantity,unit\na,north,hinge-cut,1,acres\n", 1, "column", "absent")]
    [InlineData("task,parcel,practice,quantity,unit,crewSize,Color\na,north,cleanup,1,acres,1,", 1, "column", "Color")]
    [InlineData("task,parcel,practice,quantity,unit,crewSize,unit\na,north,cleanup,1,acres,1,", 1, "column", "unit")]
    [InlineData(Header + "\na,north,hinge-cut,12,acres\n", 2, "line", "a,north,hinge-cut,12,acres")]
    [InlineData(Header + "\n\"a,north,cleanup,12,acres,3,,,,\n" + Good, 2, "line", "\"a,north,cleanup,12,acres,3,,,,")]
    public void Read_SaysWhatIsWrongWithTheFile(string text, int? line, string field, string value)
    {
        var fault = ReadText(text).Faults.Faults[0];
        Assert.Equal((line, field, value), (fault.Line, fault.Field, fault.Value));
    }

    [Fact]
    public void Read_NamesTheLineOfABadByte()
    {
        var import = TaskFile.Read(
            new MemoryStream([.. System.Text.Encoding.ASCII.GetBytes($"{Header}\n"), 0xFF]),
            ImmutableHashSet<string>.Empty, ImmutableHashSet<string>.Empty);
        Assert.Equal((2, "encoding"), (import.Faults.Faults[0].Line, import.Faults.Faults[0].Field));
    }
}
