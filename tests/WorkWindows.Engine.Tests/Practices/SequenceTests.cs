using Shouldly;
using WorkWindows.Engine.Practices;

namespace WorkWindows.Engine.Tests.Practices;

/// <summary>Common practice, no source; docs/rules/hours.md.</summary>
public sealed class SequenceTests
{
    [Theory]
    [InlineData("hinge-cut", "overstory-felling cleanup tie-down", "overstory-felling cleanup")]
    [InlineData("overstory-felling", "hinge-cut cleanup", "")]
    [InlineData("tie-down", "hinge-cut", "hinge-cut")]
    [InlineData("conifer-underplanting", "timber-harvest overstory-felling", "timber-harvest overstory-felling")]
    public void Before_NamesWhatComesFirst(string later, string open, string first) =>
        Sequence.Before(Practice(later), open.Split(' ').Select(Practice)).Select(order => order.First.Id)
            .ShouldBe(first.Split(' ', StringSplitOptions.RemoveEmptyEntries), ignoreOrder: true);

    [Fact]
    public void Order_LeadsNeverBack()
    {
        foreach (var practice in PracticeCatalogue.All)
            Reached(practice, []).ShouldNotContain(practice);

        static IEnumerable<Practice> Reached(Practice from, HashSet<Practice> seen) => Sequence.All
            .Where(order => order.First == from && seen.Add(order.Later))
            .SelectMany(order => Reached(order.Later, seen).Prepend(order.Later));
    }

    private static Practice Practice(string id) => PracticeCatalogue.Find(id)!;
}
