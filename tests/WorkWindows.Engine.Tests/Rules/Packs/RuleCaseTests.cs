using Shouldly;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Tests.Rules.Packs;

/// <summary>Every rule of every shipped pack against Cases/*.csv, both sides of each limit.</summary>
public class RuleCaseTests
{
    private static readonly Dictionary<string, Rule> Rules =
        ShippedPacks.Read().SelectMany(pack => pack.Rules).ToDictionary(rule => rule.Id);

    private static readonly ILookup<string, RuleCase> Cases = RuleCaseFile.All.ToLookup(one => one.RuleId);

    [Fact]
    public void Cases_SpeakOfRulesThatAreShipped() =>
        Assert.Subset(Rules.Keys.ToHashSet(), Cases.Select(group => group.Key).ToHashSet());

    [Fact]
    public void Cases_SpeakOfEveryRule() =>
        Assert.Superset(Rules.Keys.ToHashSet(), Cases.Select(group => group.Key).ToHashSet());

    [Fact]
    public void Rules_SayWhatTheirSourceSays() =>
        RuleCaseFile.All
            .Where(one => Rules.ContainsKey(one.RuleId))
            .Select(one => (Case: one, Answer: one.Answer(Rules[one.RuleId], Rules[one.RuleId].When)))
            .Where(one => one.Answer != one.Case.Expected)
            .Select(one => $"{one.Case.Where} {one.Case.RuleId}: {one.Answer} instead of {one.Case.Expected}")
            .ShouldBeEmpty();

    /// <summary>
    /// Each number moved by a step, each comparison turned into its neighbour and each part left out must make some
    /// case answer otherwise: nothing in a rule is left unwatched.
    /// </summary>
    [Fact]
    public void Rules_AnswerOtherwise_WhenAnyNumberOfThemIsChanged()
    {
        var mutants = Rules.Values
            .SelectMany(rule => RuleMutants.Of(rule.When).Select(mutant => (Rule: rule, Mutant: mutant))).ToList();
        var survivors = mutants
            .Where(one =>
                Cases[one.Rule.Id].All(known => known.Answer(one.Rule, one.Mutant.Condition) == known.Expected))
            .Select(one => $"{one.Rule.Id}: {one.Mutant.What}");

        Assert.InRange(mutants.Count, 1000, int.MaxValue);
        survivors.ShouldBeEmpty();
    }
}
