using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Tests.Rules.Packs;

public class ShippedPackTests
{
    private static readonly RulePack[] Packs = [.. ShippedPacks.Read()];

    private static readonly Rule[] Rules = [.. Packs.SelectMany(pack => pack.Rules)];

    [Fact]
    public void Read_GivesTheNationalPacksAndTenStates() =>
        Assert.Equal(
            [
                "us", "us-fire", "us-ground", "us-planting-herbicide", "us-trees", "us-weather", "us-weather-heat-cold",
                "us-wildlife",
                "ia", "il", "in", "mi", "mn", "mo", "ny", "oh", "pa", "wi",
            ],
            Packs.Select(pack => pack.Id));

    [Fact]
    public void Read_GivesAtLeast150Rules() => Assert.InRange(Rules.Length, 150, int.MaxValue);

    [Fact]
    public void Read_GivesEveryRuleAnIdOfItsOwn_AcrossPacks() => Assert.Distinct(Rules.Select(rule => rule.Id));

    [Fact]
    public void Read_GivesEveryRuleASource() =>
        Assert.All(Rules, rule => Assert.False(string.IsNullOrWhiteSpace(rule.Source.Title), rule.Id));

    [Fact]
    public void Read_GivesEveryRuleThatIsNotCommonPracticeADocument() =>
        Assert.All(
            Rules.Where(rule => rule.Authority != Authority.CommonPractice),
            rule => Assert.False(rule.Source.Title.StartsWith("common practice", StringComparison.Ordinal), rule.Id));

    [Theory]
    [InlineData("wind.")]
    [InlineData("daylight.")]
    [InlineData("lightning.")]
    [InlineData("storm.")]
    [InlineData("rain.")]
    [InlineData("heat.")]
    [InlineData("cold.")]
    [InlineData("crew.contact")]
    [InlineData("mi.not-alone")]
    public void Read_LetsNobodyLiftARuleThatKeepsPeopleFromHarm(string start)
    {
        var rules = Rules.Where(rule => rule.Id.StartsWith(start, StringComparison.Ordinal)).ToArray();

        Assert.NotEmpty(rules);
        Assert.All(rules, rule => Assert.True(rule.LifeSafety, rule.Id));
    }

    [Fact]
    public void Read_GivesSecureAddresses() =>
        Assert.All(
            Rules.Where(rule => rule.Source.Address is not null),
            rule => Assert.Equal(Uri.UriSchemeHttps, new Uri(rule.Source.Address!).Scheme));

    [Fact]
    public void Read_ScopesEachStatePackToItsState() =>
        Assert.All(
            Packs.Where(pack => pack.Level == PackLevel.State),
            pack => Assert.All(pack.Rules, rule => Assert.Equal([pack.Id.ToUpperInvariant()], rule.Scope.States)));

    [Fact]
    public void Read_GivesEveryStateAnOakRuleAnOpenerAndBlazeOrange() =>
        Assert.All(
            Packs.Where(pack => pack.Level == PackLevel.State),
            pack => Assert.Superset(
                new HashSet<string> { $"{pack.Id}.oak-wilt.high", $"{pack.Id}.deer-opener", $"{pack.Id}.blaze-orange" },
                pack.Rules.Select(rule => rule.Id).ToHashSet()));

    [Theory]
    [InlineData("crew.ticks")]
    [InlineData("lightning.alert")]
    [InlineData("wind.saw-close")]
    [InlineData("wind.alert")]
    [InlineData("storm.winter")]
    [InlineData("heat.moderate")]
    [InlineData("heat.high")]
    [InlineData("heat.extreme")]
    [InlineData("cold.extreme")]
    public void Read_PutsEveryPracticeUnderTheRule_ThatConcernsEverybodyOutdoors(string rule) =>
        Assert.Equal(
            PracticeCatalogue.All.Select(practice => practice.Id).Order(StringComparer.Ordinal),
            Rules.Single(one => one.Id == rule).Scope.Practices.Order(StringComparer.Ordinal));
}
