using System.Globalization;
using System.Text.RegularExpressions;

namespace WorkWindows.Engine.Rules;

/// <summary>Sentences of rules and checklists, which are written in °F, in the scale that their reader thinks in.</summary>
public static partial class TemperatureWords
{
    private const double FreezingF = 32;
    private const double CelsiusPerFahrenheit = 5 / 9.0;

    /// <summary>
    /// The same sentence with its temperatures in the scale, to a tenth. 'Up to 15 °F more' is a difference of temperatures
    /// and converted as one; degree-days stay as they are.
    /// </summary>
    public static string In(string text, TemperatureScale scale) => scale == TemperatureScale.Fahrenheit
        ? text
        : Figures().Replace(text, match =>
        {
            var isDifference = match.Groups["add"].Success || match.Groups["more"].Success;
            var figures = Numbers().Replace(match.Groups["figures"].Value, number => Converted(number.Value, isDifference));
            return $"{match.Groups["add"].Value}{figures} °C{match.Groups["more"].Value}";
        });

    private static string Converted(string number, bool isDifference)
    {
        var fahrenheit = double.Parse(number, CultureInfo.InvariantCulture);
        var celsius = (isDifference ? fahrenheit : fahrenheit - FreezingF) * CelsiusPerFahrenheit;
        // Without a sign on nothing.
        return (Math.Round(celsius, 1) + 0.0).ToString("0.#", CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"(?<add>\badd (?:up to )?)?(?<figures>(?<![\w.])-?\d+(?:\.\d+)?(?:(?:-|–| to | and )-?\d+(?:\.\d+)?)?) °F(?![\w-])(?<more> (?:more|warmer|colder)\b)?")]
    private static partial Regex Figures();

    [GeneratedRegex(@"(?<![\d])-?\d+(?:\.\d+)?")]
    private static partial Regex Numbers();
}
