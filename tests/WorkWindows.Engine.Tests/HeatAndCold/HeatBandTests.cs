using WorkWindows.Engine.HeatAndCold;

namespace WorkWindows.Engine.Tests.HeatAndCold;

/// <summary>Edges of OSHA's heat index guide (S).</summary>
public sealed class HeatBandTests
{
    [Theory]
    [InlineData(70, HeatBand.Lower)]
    [InlineData(90.9, HeatBand.Lower)]
    [InlineData(91, HeatBand.Moderate)]
    [InlineData(102.9, HeatBand.Moderate)]
    [InlineData(103, HeatBand.High)]
    [InlineData(115, HeatBand.High)]
    [InlineData(115.1, HeatBand.Extreme)]
    [InlineData(double.NaN, null)]
    public void Of_ChangesAtEachEdge(double heatIndexF, HeatBand? band) =>
        Assert.Equal(band, HeatBands.Of(heatIndexF));
}
