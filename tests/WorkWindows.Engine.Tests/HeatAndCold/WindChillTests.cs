using CsCheck;
using WorkWindows.Engine.HeatAndCold;

namespace WorkWindows.Engine.Tests.HeatAndCold;

public sealed class WindChillTests
{
    [Theory]
    // Chart of the National Weather Service, 2001, in a copy (S2): from 5 mph on in steps of 5 mph.
    [InlineData(40, "36 34 32 30 29 28 28 27 26 26 25 25")]
    [InlineData(35, "31 27 25 24 23 22 21 20 19 19 18 17")]
    [InlineData(30, "25 21 19 17 16 15 14 13 12 12 11 10")]
    [InlineData(25, "19 15 13 11 9 8 7 6 5 4 4 3")]
    [InlineData(20, "13 9 6 4 3 1 0 -1 -2 -3 -3 -4")]
    [InlineData(15, "7 3 0 -2 -4 -5 -7 -8 -9 -10 -11 -11")]
    [InlineData(10, "1 -4 -7 -9 -11 -12 -14 -15 -16 -17 -18 -19")]
    [InlineData(5, "-5 -10 -13 -15 -17 -19 -21 -22 -23 -24 -25 -26")]
    [InlineData(0, "-11 -16 -19 -22 -24 -26 -27 -29 -30 -31 -32 -33")]
    [InlineData(-5, "-16 -22 -26 -29 -31 -33 -34 -36 -37 -38 -39 -40")]
    [InlineData(-10, "-22 -28 -32 -35 -37 -39 -41 -43 -44 -45 -46 -48")]
    [InlineData(-15, "-28 -35 -39 -42 -44 -46 -48 -50 -51 -52 -54 -55")]
    [InlineData(-20, "-34 -41 -45 -48 -51 -53 -55 -57 -58 -60 -61 -62")]
    [InlineData(-25, "-40 -47 -51 -55 -58 -60 -62 -64 -65 -67 -68 -69")]
    public void OfF_MatchesEveryCellOfThePrintedChart(double tempF, string rowF)
    {
        var cells = rowF.Split(' ');
        Assert.Equal(12, cells.Length);
        for (var cell = 0; cell < cells.Length; cell++)
            Assert.Equal(double.Parse(cells[cell]), Math.Round(WindChill.OfF(tempF, 5 + 5 * cell)));
    }

    [Theory]
    // Computed (C).
    [InlineData(40, 10, 33.643)]
    [InlineData(20, 15, 6.219)]
    [InlineData(0, 15, -19.398)]
    [InlineData(-10, 20, -35.114)]
    public void OfF_MatchesComputedValues(double tempF, double windMph, double windChillF) =>
        Assert.Equal(windChillF, WindChill.OfF(tempF, windMph), 0.00051);

    [Theory]
    [InlineData(50.1, 30)]
    [InlineData(20, 3)]
    [InlineData(20, 0)]
    [InlineData(60, double.NaN)]
    public void OfF_IsTheAirTemperature_WhereThereIsNoWindChill(double tempF, double windMph) =>
        Assert.Equal(tempF, WindChill.OfF(tempF, windMph));

    [Fact]
    public void OfF_FallsAsTheWindRises() => Gen.Select(Gen.Double[-45, 50], Gen.Double[3.1, 80]).Sample(
        (tempF, windMph) => WindChill.OfF(tempF, windMph + 1) < WindChill.OfF(tempF, windMph));

    [Fact]
    public void OfF_HasNoValue_WhenOneIsMissing()
    {
        Assert.Equal(double.NaN, WindChill.OfF(double.NaN, 10));
        Assert.Equal(double.NaN, WindChill.OfF(double.NaN, 0));
        Assert.Equal(double.NaN, WindChill.OfF(20, double.NaN));
    }

    [Fact]
    public void OfF_RefusesANegativeWind() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => WindChill.OfF(20, -1));
}
