using System.Globalization;
using System.Text.RegularExpressions;

namespace WorkWindows.Engine.Rules;

/// <summary>
/// Figures of temperature inside of sentences, in the scale that their reader thinks in. Rules and checklist items are
/// written in °F and stay so where they are stored or hashed; this is for the reader alone.
/// </summary>
public static partial class TemperatureWords
{
    private const double CelsiusPerFahrenheit = 5 / 9.0;
    private const double FreezingF = 32;

    /// <summary>
    /// The same sentence with its °F in °C, to a tenth as limits are told, and °F-days in °C-days, whole: '20 °F',
    /// '91 to 103 °F', 'between -18 and -32 °F' and '32-45 °F'. What says how much more or less, as in '15 °F more' or
    /// 'may add 15 °F', is turned as a difference. Any other form, and a sentence without °F, stays as it is.
    /// </summary>
    /// <param name="text">A sentence, or several.</param>
    /// <param name="scale">The reader's.</param>
    public static string In(string text, TemperatureScale scale) => scale switch
    {
        TemperatureScale.Fahrenheit => text,
        TemperatureScale.Celsius => Figures().Replace(text, Celsius),
    };

    private static string Celsius(Match match)
    {
        var (isDifference, isDays) = (match.Groups["more"].Success || match.Groups["adds"].Success,
            match.Groups["days"].Success);
        var from = match.Groups["from"];
        var range = from.Success ? Figure(from.Value) + match.Groups["join"].Value : "";
        return $"{match.Groups["adds"].Value}{range}{Figure(match.Groups["to"].Value)} °C"
            + $"{match.Groups["days"].Value}{match.Groups["more"].Value}";

        string Figure(string digits)
        {
            var value = double.Parse(digits.Replace('−', '-'), CultureInfo.InvariantCulture);
            var celsius = (isDifference || isDays ? value : value - FreezingF) * CelsiusPerFahrenheit;
            // Added to, what rounds to nothing has no sign.
            return (Math.Round(celsius, isDays ? 0 : 1) + 0.0).ToString("0.#", CultureInfo.InvariantCulture);
        }
    }

    /// <summary>
    /// A number is not the end of a longer one, and a minus stands before no word or number: it would be a dash.
    /// </summary>
    [GeneratedRegex("""
        (?<adds>\b(?:adds?|(?:limit|rises?|falls?|drops?|warms?|cools?|differs?|off)\ by)\ )?
        (?<![\d.,])
        (?:(?<from>(?:(?<!\w)[-−])?\d+(?:\.\d+)?)(?<join>\ to\ |[-–]|(?<=\bbetween\ [-−.\d]+)\ and\ ))?
        (?<to>(?:(?<!\w)[-−])?\d+(?:\.\d+)?)\ °F
        (?<days>-days)?\b
        (?<more>\ (?:more|less|warmer|colder|cooler|hotter|higher|lower)\b)?
        """, RegexOptions.IgnorePatternWhitespace | RegexOptions.CultureInvariant)]
    private static partial Regex Figures();
}
