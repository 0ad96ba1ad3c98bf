using Shouldly;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Tests.Rules;

public sealed class TemperatureWordsTests
{
    /// <summary>°C = (°F − 32) × 5/9 (NIST Special Publication 811, 2008, B.8); differences by 5/9 alone.</summary>
    [Theory]
    [InlineData("Nights below 20 °F freeze it.", "Nights below -6.7 °C freeze it.")]
    [InlineData("Above 32 °F it thaws.", "Above 0 °C it thaws.")]
    [InlineData("Wind chill of -18 °F or less", "Wind chill of -27.8 °C or less")]
    [InlineData("storage at 32-45 °F for 7 days", "storage at 0-7.2 °C for 7 days")]
    [InlineData("between 91 and 103 °F: put heavy work off", "between 32.8 and 39.4 °C: put heavy work off")]
    [InlineData("Heat index up to 91 °F, in the sun up to 15 °F more", "Heat index up to 32.8 °C, in the sun up to 8.3 °C more")]
    [InlineData("Full sun may add up to 15 °F, and", "Full sun may add up to 8.3 °C, and")]
    [InlineData("450 to 550 °F-days above 50 °F", "450 to 550 °F-days above 10 °C")]
    [InlineData("gusts above 25 mph", "gusts above 25 mph")]
    public void In_ConvertsTemperatures_AndNothingElse(string text, string celsius)
    {
        TemperatureWords.In(text, TemperatureScale.Celsius).ShouldBe(celsius);
        TemperatureWords.In(text, TemperatureScale.Fahrenheit).ShouldBe(text);
    }
}
