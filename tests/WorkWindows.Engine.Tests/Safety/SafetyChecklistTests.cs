using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Safety;

namespace WorkWindows.Engine.Tests.Safety;

public class SafetyChecklistTests
{
    private static readonly string[] Groups = ["saw", "felling", "machine", "herbicide", "fire"];

    [Theory]
    [InlineData("overstory-felling", 40, "saw felling fire")]
    [InlineData("hinge-cut", 40, "saw felling fire")]
    [InlineData("re-cut", 40, "saw felling fire")]
    [InlineData("tie-down", 14, "")]
    [InlineData("cleanup", 29, "saw fire")]
    [InlineData("trail-opening", 29, "saw fire")]
    [InlineData("timber-harvest", 41, "saw felling machine fire")]
    [InlineData("girdling", 29, "saw fire")]
    [InlineData("frill-herbicide", 16, "herbicide")]
    [InlineData("conifer-underplanting", 14, "")]
    [InlineData("prescribed-burn", 17, "fire")]
    public void For_ComposesTheListFromThePracticesTraits(string practice, int count, string groups)
    {
        var items = For(practice).Items;
        Assert.Equal(count, items.Length);
        Assert.Equal(
            groups.Split(' ', StringSplitOptions.RemoveEmptyEntries),
            Groups.Where(group => items.Any(item => item.Id.StartsWith($"{group}-", StringComparison.Ordinal))));
    }

    [Fact]
    public void For_CoversEveryPractice() =>
        Assert.All(PracticeCatalogue.All, practice => Assert.Contains(
            SafetyChecklist.For(practice).Items, item => item.Id == "never-alone"));

    [Fact]
    public void For_ShowsASawUserTheRedFlagStop_ButNotThePrescription() =>
        Assert.Equal(
            ["fire-red-flag"],
            For("cleanup").Items.Select(item => item.Id).Where(id => id.StartsWith("fire-", StringComparison.Ordinal)));

    [Fact]
    public void For_OrdersByWearCarryDoStop()
    {
        var kinds = For("timber-harvest").Items.Select(item => item.Kind).ToArray();
        Assert.Equal(kinds.Order(), kinds);
        Assert.Equal(Enum.GetValues<SafetyItemKind>(), kinds.Distinct());
    }

    [Fact]
    public void Usual_SaysWhatTheToolDoesNotDecide() =>
        Assert.Collection(
            Cautions.Usual,
            limit => Assert.Contains("not an order to cut", limit, StringComparison.Ordinal),
            codes => Assert.Contains("Local codes", codes, StringComparison.Ordinal),
            licence => Assert.Contains("licence", licence, StringComparison.Ordinal),
            doubt => Assert.Contains("If in doubt, stop", doubt, StringComparison.Ordinal));

    private static SafetyChecklist For(string practice) => SafetyChecklist.For(PracticeCatalogue.Find(practice)!);
}
