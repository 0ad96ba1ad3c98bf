using Shouldly;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Practices;
using WorkWindows.Service.Records;
using WorkWindows.Service.Tests.Windows;
using WorkWindows.Service.Windows;
using static WorkWindows.Service.Tests.Windows.GivenTask;

namespace WorkWindows.Service.Tests.Records;

public sealed class TemperatureLimitsTests
{
    [Fact]
    public void Of_TakesTheLimitsOfTheRulesThatSpeakOfTheTasks()
    {
        var given = GivenTask.Of(
            [30],
            Closes("signal: min-temperature, below: 20 degF, days-in-a-row: 3"),
            Limits("signal: max-temperature, above: 0 degC"),
            Limits("signal: min-temperature, below: 20 degF"),
            Requires("signal: min-temperature, below: 10 degF"),
            Closes("signal: gust, above: 30 mph")).Evaluation;

        var limits = TemperatureLimits.Of(given.Packs, [given.Facts]);

        limits.Select(limit => $"{limit.Label}: {string.Join("; ", limit.Rules)}").ShouldBe(
        [
            "20 °F: minimum temperature below 20 °F closes: Rule 0; minimum temperature below 20 °F limits: Rule 2",
            "32 °F: maximum temperature above 0 °C limits: Rule 1",
        ]);
        TemperatureLimits.Of(given.Packs, [given.Facts with { Practice = PracticeCatalogue.Find("tie-down")! }]).ShouldBeEmpty();
        TemperatureLimits.Of(given.Packs, []).ShouldBeEmpty();
    }

    [Fact]
    public void Of_DrawsTheColdThatSnapsHinges_ForAHingeCutUnderTheShippedRules()
    {
        TaskFacts facts = new("T-1", PracticeCatalogue.Find("hinge-cut")!, "MI", "26065", [], []);

        TemperatureLimits.Of(new RulePacks().Packs, [facts]).Select(limit => limit.ValueF).ShouldBeSubsetOf(
            TemperatureLimits.Of(
                new RulePacks().Packs, [facts, facts with { Practice = PracticeCatalogue.Find("frill-herbicide")! }])
                .Select(limit => limit.ValueF));
        TemperatureLimits.Of(new RulePacks().Packs, [facts]).Select(limit => limit.ValueF).ShouldContain(20);
    }
}
