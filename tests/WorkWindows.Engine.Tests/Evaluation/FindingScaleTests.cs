using NodaTime;
using Shouldly;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Evaluation;

/// <summary>Fixed points of the scales: 32 °F is 0 °C, 50 °F is 10 °C, and a step of 9 °F is one of 5 °C (definition).</summary>
public sealed class FindingScaleTests
{
    [Theory]
    [InlineData(TemperatureScale.Celsius, "minimum temperature -10 °C (forecast); limit: below 0 °C")]
    [InlineData(TemperatureScale.Fahrenheit, "minimum temperature 14 °F (forecast); limit: below 32 °F")]
    public void In_TellsATemperatureAndItsLimit(TemperatureScale scale, string words)
    {
        var limit = new Compare(SignalKind.MinTemperatureC, Relation.Below, new(32, RuleUnit.DegF));

        Wording.Of(new SignalFinding(limit, 14, 1, 0, Truth.Holds, Basis.Forecast).In(scale)).ShouldBe(words);
    }

    [Fact]
    public void In_ScalesAMarginAsADifference()
    {
        var limit = new Compare(SignalKind.MinTemperatureC, Relation.Below, new(32, RuleUnit.DegF));
        var finding = new SignalFinding(limit, 14, 1, 0, Truth.Holds, Basis.Forecast);

        ((SignalFinding)finding.In(TemperatureScale.Celsius)).Margin!.Value.ShouldBe(10, 1e-9);
    }

    [Fact]
    public void In_TellsHeatSummedOverDaysWithItsBase()
    {
        var heat = new HeatSince(
            new(DegreeDayMethod.SimpleAverage, new(50, RuleUnit.DegF), null), new(1, 1), Relation.AtLeast,
            new(90, RuleUnit.DegreeDaysF));
        var finding = new SumFinding(heat, 18, 0, new LocalDate(2026, 1, 1), Truth.Fails, Basis.Observed);

        Wording.Of(finding.In(TemperatureScale.Celsius)).ShouldBe(
            "heat above 10 °C since 1 Jan 2026 (simple average) 10 °C-days (observed); limit: at least 50 °C-days");
    }

    [Fact]
    public void In_LeavesOtherUnitsAlone()
    {
        var limit = new Compare(SignalKind.GustMps, Relation.AtLeast, new(25, RuleUnit.Mph));
        var finding = new SignalFinding(limit, 30, 1, 1, Truth.Holds, Basis.Forecast);

        finding.In(TemperatureScale.Celsius).ShouldBe(finding);
    }
}
