using System.Globalization;
using NodaTime;
using Shouldly;
using UnitsNet.Units;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Records;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Tests.Windows;

/// <summary>Days and areas as their readers write them.</summary>
public sealed class ReaderWordsTests
{
    /// <summary>
    /// An acre of 4,840 square yards is 0.404 686 hectares: NIST Handbook 44, appendix C, general tables of units (0.404 685 642 24
    /// with the international yard of 0.9144 m).
    /// </summary>
    [Theory]
    [InlineData("Beech Ridge, 4.5 acres", "Beech Ridge, 1.82 ha")]
    [InlineData("1 acre", "0.4 ha")]
    [InlineData("A pocket of 0.25 to 0.5 acres.", "A pocket of 0.1 to 0.2 ha.")]
    [InlineData("2,471.05 acres", "1000 ha")]
    [InlineData("40.2 acres", "16.3 ha")]
    [InlineData("120 stems an acre", "120 stems an acre")]
    [InlineData("a quarter of an acre", "a quarter of an acre")]
    public void Areas_AreToldInHectares_WhereTheyAreAFigure(string text, string said)
    {
        AreaWords.In(text, AreaUnit.Hectare).ShouldBe(said);
        AreaWords.In(text, AreaUnit.Acre).ShouldBe(text);
    }

    /// <summary>32 °F is 0 °C, 212 °F is 100 °C, and a degree Celsius is 1.8 of Fahrenheit: NIST SP 811, appendix B.8.</summary>
    [Fact]
    public void Charts_AreDrawnInTheScaleOfTheirReader()
    {
        var celsius = new PersonUnits(TemperatureScale.Celsius, AreaUnit.Acre);
        var chart = new ChartSpec([1, 2, 3], [new("minimum", "--cold", [32, null, 212])]) { Limits = [new(50, "50 °F")] };
        var heat = new ChartSpec([1], [new("sum", "--warm", [450])]) { Unit = ChartSpec.DegreeDays };

        var turned = chart.In(celsius);

        (turned.Unit, turned.Limits[0]).ShouldBe(("°C", new ChartLimit(10, "10 °C")));
        turned.Series[0].Values.ShouldBe([0, null, 100]);
        (heat.In(celsius).Unit, heat.In(celsius).Series[0].Values[0]).ShouldBe(("°C-days", 250));
        chart.In(celsius with { Temperatures = TemperatureScale.Fahrenheit }).ShouldBeSameAs(chart);
    }

    [Theory]
    [InlineData("Lets go on 24 January.", "Lets go on January 24.")]
    [InlineData("1 Oct 2026 to 24 Jan 2027", "Oct 1, 2026 to Jan 24, 2027")]
    [InlineData("2 to 5 May", "May 2 to 5")]
    [InlineData("58 days left", "58 days left")]
    [InlineData("15 Mayflower Lane", "15 Mayflower Lane")]
    [InlineData("In October 2026", "In October 2026")]
    public void Days_HaveTheMonthFirst_WhereTheRegionWritesItSo(string text, string said)
    {
        In(DayWords.MonthFirst, () => DayWords.In(text)).ShouldBe(said);
        In("en-GB", () => DayWords.In(text)).ShouldBe(text);
    }

    [Theory]
    [InlineData("en-US", "Fri Nov 27", "Fri Nov 27, 2026")]
    [InlineData("en-GB", "Fri 27 Nov", "Fri 27 Nov 2026")]
    [InlineData("", "Fri 27 Nov", "Fri 27 Nov 2026")]
    public void Days_AreWrittenAsTheRegionDoes(string region, string day, string withYear)
    {
        In(region, () => DayWords.Of(new LocalDate(2026, 11, 27))).ShouldBe(day);
        In(region, () => DayWords.WithYear(new LocalDate(2026, 11, 27))).ShouldBe(withYear);
    }

    private static string In(string region, Func<string> say)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(region);
            return say();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
