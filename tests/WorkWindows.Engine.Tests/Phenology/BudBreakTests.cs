using NodaTime;
using WorkWindows.Engine.Phenology;

namespace WorkWindows.Engine.Tests.Phenology;

public sealed class BudBreakTests
{
    // T6: fits to Harvard Forest HF003 (CC BY), 1990-2001, daily means of the pyPhenology package (C): base 0 and base
    // 5 from 1 January, base 4 from 22 March, degree-days in °C.
    [Theory]
    [InlineData("black cherry", 208, 58, 62)]
    [InlineData("trembling aspen", 300, 100, 102)]
    [InlineData("sugar maple", 326, 100, 116)]
    [InlineData("paper birch", 328, 100, 120)]
    [InlineData("red maple", 348, 120, 144)]
    [InlineData("American beech", 376, 134, 150)]
    [InlineData("northern red oak", 394, 146, 164)]
    [InlineData("white ash", 392, 134, 160)]
    [InlineData("black oak", 426, 162, 188)]
    [InlineData("white oak", 444, 172, 198)]
    [InlineData("black gum", 490, 208, 238)]
    public void Fits_AreThoseOfTheTable(string species, double fromJanuary, double fromJanuaryBase5, double fromMarch)
    {
        BudBreak[] all =
        [
            BudBreak.BlackCherry, BudBreak.TremblingAspen, BudBreak.SugarMaple, BudBreak.PaperBirch, BudBreak.RedMaple,
            BudBreak.AmericanBeech, BudBreak.NorthernRedOak, BudBreak.WhiteAsh, BudBreak.BlackOak, BudBreak.WhiteOak,
            BudBreak.BlackGum,
        ];
        var fit = all.Single(one => one.Species == species);

        Assert.Equal(new ThermalTime(new AnnualDate(1, 1), 0, fromJanuary), fit.FromJanuary);
        Assert.Equal(new ThermalTime(new AnnualDate(1, 1), 5, fromJanuaryBase5), fit.FromJanuaryBase5);
        Assert.Equal(new ThermalTime(new AnnualDate(3, 22), 4, fromMarch), fit.FromMarch);
    }
}
