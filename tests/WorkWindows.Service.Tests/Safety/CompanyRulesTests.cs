using Shouldly;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Safety;
using WorkWindows.Service.Tests.Notices;

namespace WorkWindows.Service.Tests.Safety;

public sealed class CompanyRulesTests
{
    [Fact]
    public void EachId_IsARuleOfTheShippedPacks_ThatRequires()
    {
        var rules = ShippedPacks.Read().SelectMany(pack => pack.Rules).Where(
            rule => CompanyRules.Ids.Contains(rule.Id));

        rules.Select(rule => (rule.Id, rule.Effect)).ShouldBe(
            CompanyRules.Ids.Select(id => (id, Effect.Requires)), ignoreOrder: true);
    }

    [Theory]
    [InlineData("hinge-cut", "mi.not-alone crew.contact")]
    [InlineData("cleanup", "crew.contact")]
    [InlineData("tie-down", "")]
    public void Of_AreTheRulesThatSpeakOfTheWork_TheStatesFirst(string practice, string rules)
    {
        var night = GivenNight.Work("oooooooo", task => task with
        {
            Practice = WorkWindows.Engine.Practices.PracticeCatalogue.Find(practice)!,
        });
        var explanation = Explanation.Of(night.Evaluation, GivenNight.Today);

        string.Join(' ', CompanyRules.Of(explanation).Select(verdict => verdict.Rule.Id)).ShouldBe(rules);
        CompanyRules.Forbidding(explanation).Count.ShouldBe(CompanyRules.Of(explanation).Count, "all are regulations");
    }
}
