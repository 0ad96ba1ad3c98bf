using UnitsNet;
using WorkWindows.Engine.HeatAndCold;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Rules.Packs;

/// <summary>
/// A rule on a feeling asks for the temperature, too, so that a day whose humidity or wind nobody knows is not in doubt
/// where they cannot matter. Here that they cannot.
/// </summary>
public class GateTests
{
    // Beyond any wind on record, 253 mph.
    private const double StrongestMph = 255;

    [Theory]
    [InlineData("heat.moderate")]
    [InlineData("heat.high")]
    [InlineData("heat.extreme")]
    public void HeatIndex_StaysUnderTheLimit_BelowTheTemperatureAskedFor(string rule)
    {
        var (limitC, gateC) = Limits(rule, SignalKind.HeatIndexC, SignalKind.MaxTemperatureC);
        for (var tempF = 0.0; tempF < DegF(gateC) - 0.05; tempF += 0.1)
        {
            for (var humidity = 0; humidity <= 100; humidity++)
                Assert.InRange(HeatIndex.OfF(tempF, humidity), double.MinValue, DegF(limitC) - 1e-9);
        }
    }

    [Fact]
    public void WindChill_StaysOverTheLimit_AboveTheTemperatureAskedFor()
    {
        var (limitC, gateC) = Limits("cold.extreme", SignalKind.WindChillC, SignalKind.MinTemperatureC);
        // Stations report whole °F.
        for (var tempF = DegF(gateC) + 1; tempF <= 60; tempF++)
        {
            for (var mph = 0; mph <= StrongestMph; mph++)
                Assert.InRange(WindChill.OfF(tempF, mph), DegF(limitC) + 1e-9, double.MaxValue);
        }
    }

    private static (double LimitC, double GateC) Limits(string rule, SignalKind feeling, SignalKind temperature)
    {
        var all = (AllOf)ShippedPacks.Read().SelectMany(pack => pack.Rules).Single(one => one.Id == rule).When;
        double Limit(SignalKind kind) =>
            all.Parts.OfType<Compare>().Single(part => part.Signal == kind).Threshold.InSignalUnit;
        return (Limit(feeling), Limit(temperature));
    }

    private static double DegF(double degC) => Temperature.FromDegreesCelsius(degC).DegreesFahrenheit;
}
