using CsCheck;
using WorkWindows.Engine.Ground;

namespace WorkWindows.Engine.Tests.Ground;

public sealed class FrostDepthTests
{
    // Homogeneous soil of the manual UFC 3-130-06: mean annual 37.2 °F, index 2500, 160 days. Inputs and the manual's
    // own results (coefficient about 0.92, depth about 5.8 ft) are from memory, the figures below computed from them.
    private static readonly GroundSoilUs ManualSoil = new(0.72, 100, 15);

    [Fact]
    public void Soil_MatchesManualsExample()
    {
        Assert.Equal(2160, ManualSoil.LatentHeatBtuPerFt3, 1e-9);
        Assert.Equal(28.25, ManualSoil.HeatCapacityBtuPerFt3F, 1e-9);
    }

    [Fact]
    public void ModifiedBerggrenFt_MatchesManualsExample()
    {
        Assert.Equal(0.924, FrostDepth.BerggrenCoefficient(2500, ManualSoil, 37.2, 160), 0.00051);
        Assert.Equal(6.32, FrostDepth.StefanFt(2500, ManualSoil), 0.0051);
        Assert.Equal(5.85, FrostDepth.ModifiedBerggrenFt(2500, ManualSoil, 37.2, 160), 0.0051);
    }

    [Theory]
    // Computed (C).
    [InlineData(300, 1.5, 1.0e8, 0.882)]
    [InlineData(600, 1.5, 1.0e8, 1.247)]
    [InlineData(100, 1.0, 0.7e8, 0.497)]
    public void StefanM_MatchesComputedValues(double indexCDays, double conductivity, double latent, double depthM) =>
        Assert.Equal(depthM, FrostDepth.StefanM(indexCDays, new(conductivity, latent)), 0.00051);

    [Fact]
    public void StefanM_AgreesWithTheFormulaInFeet()
    {
        // 1 BTU/(h ft °F) = 1.730735 W/(m K), 1 lb/ft³ = 16.018463 kg/m³;
        // the manual's 144 BTU/lb are 0.3 % more than 334 kJ/kg.
        var soil = GroundSoil.Of(0.72 * 1.730735, 100 * 16.018463, 15);
        Assert.Equal(FrostDepth.StefanFt(2500, ManualSoil) * 0.3048, FrostDepth.StefanM(2500 / 1.8, soil), 0.003);
    }

    [Fact]
    public void StefanM_DoublesWithFourfoldCold() => Gen.Double[0, 3000].Sample(indexCDays =>
    {
        var soil = GroundSoil.Of(1.5, 1500, 20);
        return Math.Abs(FrostDepth.StefanM(4 * indexCDays, soil) - 2 * FrostDepth.StefanM(indexCDays, soil)) < 1e-9;
    });

    [Fact]
    public void StefanM_HasNoValue_WhenTheIndexIsMissing() =>
        Assert.Equal(double.NaN, FrostDepth.StefanM(double.NaN, GroundSoil.Of(1.5, 1500, 20)));
}
