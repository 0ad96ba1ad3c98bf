using WorkWindows.Engine.HeatAndCold;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Wind;

namespace WorkWindows.Engine.Tests.Rules.Packs;

/// <summary>The limits of the shipped rules are the edges of the published scales that their sources name.</summary>
public class ScaleTests
{
    // Beaufort wind scale, US National Weather Service: docs/rules/wind.md
    [Theory]
    [InlineData("wind.caution", SignalKind.WindMps, 4)]
    [InlineData("wind.sustained-close", SignalKind.WindMps, 5)]
    [InlineData("wind.gust-close", SignalKind.GustMps, 6)]
    [InlineData("wind.saw-close", SignalKind.GustMps, 7)]
    public void WindLimit_IsTheLowestSpeedOfItsForce(string rule, SignalKind signal, int force)
    {
        var compare = Limit(rule, signal);

        Assert.Equal((Relation.AtLeast, RuleUnit.Mph), (compare.Relation, compare.Threshold.Unit));
        Assert.Equal(force, Beaufort.ForceOf(compare.Threshold.Value));
        Assert.Equal(force - 1, Beaufort.ForceOf(Math.BitDecrement(compare.Threshold.Value)));
    }

    // Heat index guide for employers, OSHA: docs/rules/heat-and-cold.md
    [Theory]
    [InlineData("heat.moderate", Relation.AtLeast, HeatBand.Moderate)]
    [InlineData("heat.high", Relation.AtLeast, HeatBand.High)]
    [InlineData("heat.extreme", Relation.Above, HeatBand.Extreme)]
    public void HeatLimit_IsTheEdgeOfItsBand(string rule, Relation relation, HeatBand band)
    {
        var compare = Limit(rule, SignalKind.HeatIndexC);
        var limitF = compare.Threshold.Value;
        var (last, first) = relation == Relation.Above
            ? (limitF, Math.BitIncrement(limitF))
            : (Math.BitDecrement(limitF), limitF);

        Assert.Equal((relation, RuleUnit.DegF), (compare.Relation, compare.Threshold.Unit));
        Assert.Equal((band - 1, band), (HeatBands.Of(last), HeatBands.Of(first)));
    }

    private static Compare Limit(string rule, SignalKind signal)
    {
        var when = ShippedPacks.Read().SelectMany(pack => pack.Rules).Single(one => one.Id == rule).When;
        return (when is AllOf all ? all.Parts : [when]).OfType<Compare>().Single(part => part.Signal == signal);
    }
}
