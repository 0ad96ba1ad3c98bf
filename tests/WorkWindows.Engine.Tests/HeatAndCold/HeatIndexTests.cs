using CsCheck;
using WorkWindows.Engine.HeatAndCold;

namespace WorkWindows.Engine.Tests.HeatAndCold;

public sealed class HeatIndexTests
{
    [Theory]
    // Chart of the National Weather Service, Tulsa: from 40 % on in steps of 5 % (S).
    [InlineData(110, "136")]
    [InlineData(108, "130 137")]
    [InlineData(106, "124 130 137")]
    [InlineData(104, "119 124 131 137")]
    [InlineData(102, "114 119 124 130 137")]
    [InlineData(100, "109 114 118 124 129 136")]
    [InlineData(98, "105 109 113 117 123 128 134")]
    [InlineData(96, "101 104 108 112 116 121 126 132")]
    [InlineData(94, "97 100 103 106 110 114 119 124 129 135")]
    [InlineData(92, "94 96 99 101 105 108 112 116 121 126 131")]
    [InlineData(90, "91 93 95 97 100 103 106 109 113 117 122 127 132")]
    [InlineData(88, "88 89 91 93 95 98 100 103 106 110 113 117 121")]
    [InlineData(86, "85 87 88 89 91 93 95 97 100 102 105 108 112")]
    [InlineData(84, "83 84 85 86 88 89 90 92 94 96 98 100 103")]
    [InlineData(82, "81 82 83 84 84 85 86 88 89 90 91 93 95")]
    [InlineData(80, "80 80 81 81 82 82 83 84 84 85 86 86 87")]
    public void RegressionF_MatchesEveryCellOfThePrintedChart(double tempF, string rowF)
    {
        var cells = rowF.Split(' ');
        for (var cell = 0; cell < cells.Length; cell++)
        {
            var humidity = 40 + 5 * cell;
            // The chart prints 93 where the formula gives 92.493.
            var printed = (tempF, humidity) == (90, 45) ? 92 : double.Parse(cells[cell]);
            Assert.Equal(printed, Math.Round(HeatIndex.RegressionF(tempF, humidity)));
        }
    }

    [Theory]
    // The humid adjustment, which the chart lacks: the eight cells in which it shows (C).
    [InlineData(80, 95, 87.80)]
    [InlineData(80, 100, 89.29)]
    [InlineData(82, 90, 91.99)]
    [InlineData(82, 95, 93.97)]
    [InlineData(82, 100, 96.04)]
    [InlineData(84, 95, 100.88)]
    [InlineData(84, 100, 103.56)]
    [InlineData(86, 95, 108.53)]
    public void OfF_LiesAboveTheChart_InVeryHumidAir(double tempF, double humidity, double heatIndexF) =>
        Assert.Equal(heatIndexF, HeatIndex.OfF(tempF, humidity), 0.0051);

    [Theory]
    // Each branch of the procedure (C).
    [InlineData(65, 50, 64.275)]
    [InlineData(70, 80, 70.23)]
    [InlineData(78, 60, 78.16)]
    [InlineData(79, 70, 79.445)]
    [InlineData(80, 40, 79.79)]
    [InlineData(81, 10, 78.533)]
    [InlineData(90, 10, 85.279)]
    [InlineData(95, 5, 88.177)]
    [InlineData(95, 10, 89.450)]
    [InlineData(100, 12, 94.918)]
    [InlineData(85, 90, 101.781)]
    [InlineData(88, 60, 95.149)]
    [InlineData(96, 50, 107.637)]
    [InlineData(96, 65, 121.032)]
    [InlineData(100, 55, 123.638)]
    [InlineData(110, 40, 135.657)]
    public void OfF_MatchesComputedValues_OfEachBranch(double tempF, double humidity, double heatIndexF) =>
        Assert.Equal(heatIndexF, HeatIndex.OfF(tempF, humidity), 0.00051);

    [Theory]
    [InlineData(65, 50, 63.55)]
    [InlineData(70, 80, 70.46)]
    [InlineData(78, 60, 78.32)]
    [InlineData(79, 70, 79.89)]
    public void SimpleF_MatchesComputedValues(double tempF, double humidity, double simpleF) =>
        Assert.Equal(simpleF, HeatIndex.SimpleF(tempF, humidity), 0.0051);

    [Fact]
    public void RegressionF_IsAlsoKnown_WhereTheProcedureStillTakesTheSimpleValue() =>
        Assert.Equal(79.93, HeatIndex.RegressionF(80, 40), 0.0051);

    [Fact]
    public void OfF_RisesWithTemperature_InAirThatIsNotDry() =>
        Gen.Select(Gen.Double[40, 109], Gen.Double[40, 85]).Sample((tempF, humidity) =>
            HeatIndex.OfF(tempF + 1, humidity) > HeatIndex.OfF(tempF, humidity));

    [Fact]
    public void OfF_HasNoValue_WhenOneIsMissing()
    {
        Assert.Equal(double.NaN, HeatIndex.OfF(double.NaN, 50));
        Assert.Equal(double.NaN, HeatIndex.OfF(90, double.NaN));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(101)]
    public void OfF_RefusesWhatIsNoHumidity(double humidity) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => HeatIndex.OfF(90, humidity));
}
