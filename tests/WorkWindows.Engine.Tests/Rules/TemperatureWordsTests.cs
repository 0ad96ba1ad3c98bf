using Shouldly;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Tests.Rules;

/// <summary>°C = (°F − 32) · 5/9, a difference · 5/9 (NIST SP 811, B.8 and B.9).</summary>
public sealed class TemperatureWordsTests
{
    [Theory]
    [InlineData("Three nights in a row below 20 °F freeze it.", "Three nights in a row below -6.7 °C freeze it.")]
    [InlineData("32 °F", "0 °C")]
    [InlineData("31.99 °F", "0 °C")]  // no '-0'
    [InlineData("-40 °F", "-40 °C")]
    [InlineData("Wind chill of -18 °F or less", "Wind chill of -27.8 °C or less")]
    [InlineData("Wind chill of −18 °F or less", "Wind chill of -27.8 °C or less")]
    [InlineData("50.5 °F or more", "10.3 °C or more")]
    [InlineData("minimum temperature 18.3 °F (forecast), below 20 °F", "minimum temperature -7.6 °C (forecast), below -6.7 °C")]
    public void In_TurnsATemperature(string text, string celsius) => Celsius(text).ShouldBe(celsius);

    [Theory]
    [InlineData("Heat index 91 to 103 °F: put it off.", "Heat index 32.8 to 39.4 °C: put it off.")]
    [InlineData("20 to 25 °F", "-6.7 to -3.9 °C")]
    [InlineData("-5 to 5 °F", "-20.6 to -15 °C")]
    [InlineData("storage at 32-45 °F", "storage at 0-7.2 °C")]
    [InlineData("storage at 32–45 °F", "storage at 0–7.2 °C")]
    [InlineData("between -18 and -32 °F", "between -27.8 and -35.6 °C")]
    [InlineData("on 3 and 20 °F", "on 3 and -6.7 °C")]  // no range
    public void In_TurnsBothEndsOfARange(string text, string celsius) => Celsius(text).ShouldBe(celsius);

    [Theory]
    [InlineData("in the sun up to 15 °F more: drink", "in the sun up to 8.3 °C more: drink")]
    [InlineData("sun, which alone may add 15 °F.", "sun, which alone may add 8.3 °C.")]
    [InlineData("5 °F warmer than the station", "2.8 °C warmer than the station")]
    [InlineData("5 to 10 °F colder", "2.8 to 5.6 °C colder")]
    [InlineData("the hollow is off by 9 °F", "the hollow is off by 5 °C")]
    [InlineData("past the limit by 9 °F", "past the limit by 5 °C")]
    [InlineData("9 °F or less", "-12.8 °C or less")]  // a temperature
    public void In_TurnsADifference(string text, string celsius) => Celsius(text).ShouldBe(celsius);

    [Theory]
    [InlineData("from 450 to 550 °F-days above 50 °F", "from 250 to 306 °C-days above 10 °C")]
    [InlineData("450 °F-days", "250 °C-days")]
    public void In_TurnsDegreeDays_AsSums(string text, string celsius) => Celsius(text).ShouldBe(celsius);

    [Theory]
    [InlineData("Gusts of 25 mph, 2 in of snow, -6.7 °C.")]
    [InlineData("the low 40s °F")]
    [InlineData("1,200 °F-days")]  // not read, and true as it stands
    [InlineData("")]
    public void In_LeavesEverythingElse(string text) => Celsius(text).ShouldBe(text);

    [Fact]
    public void In_LeavesAllToWhoeverReadsFahrenheit() =>
        TemperatureWords.In("below 20 °F", TemperatureScale.Fahrenheit).ShouldBe("below 20 °F");

    /// <summary>No rule's words that are shipped keep a °F for a reader of °C, but those that round it.</summary>
    [Fact]
    public void In_TurnsAllThatShippedRulesSay()
    {
        var words = ShippedPacks.Read().SelectMany(pack => pack.Rules)
            .SelectMany(rule => new[] { rule.Title, rule.Because, rule.Measure }).OfType<string>()
            .Where(text => text.Contains("°F", StringComparison.Ordinal)).ToList();

        words.Count.ShouldBeGreaterThan(5);
        words.ShouldAllBe(text => !Celsius(text).Contains("°F"));
    }

    private static string Celsius(string text) => TemperatureWords.In(text, TemperatureScale.Celsius);
}
