using System.Globalization;
using System.Text.RegularExpressions;
using UnitsNet;
using UnitsNet.Units;

namespace WorkWindows.Service.Windows;

/// <summary>How pages write areas.</summary>
public static partial class AreaWords
{
    private const double FineBelow = 10;

    /// <summary>As in 40.2 acres.</summary>
    /// <param name="areaM2">Square metres.</param>
    public static string Of(double areaM2) => string.Create(
        CultureInfo.InvariantCulture, $"{Area.FromSquareMeters(areaM2).Acres:0.#} acres");

    /// <summary>
    /// The same sentence with its acres in hectares, small ones to a hundredth: '4.5 acres', '0.25 to 0.5 acres'. What is
    /// reckoned for an acre, as '120 stems an acre', stays as it is.
    /// </summary>
    /// <param name="text">A sentence, or several.</param>
    /// <param name="unit">The reader's: hectares, or any other for acres.</param>
    public static string In(string text, AreaUnit unit) => unit == AreaUnit.Hectare
        ? Acres().Replace(text, match =>
            $"{(match.Groups["from"].Success ? Hectares(match.Groups["from"].Value) + match.Groups["join"].Value : "")}"
            + $"{Hectares(match.Groups["to"].Value)} ha")
        : text;

    private static string Hectares(string acres)
    {
        var hectares = Area.FromAcres(double.Parse(acres, NumberStyles.Number, CultureInfo.InvariantCulture)).Hectares;
        return hectares.ToString(hectares < FineBelow ? "0.##" : "0.#", CultureInfo.InvariantCulture);
    }

    [GeneratedRegex("""(?<![\d.,])(?:(?<from>\d[\d,]*(?:\.\d+)?)(?<join> to |[-–]))?(?<to>\d[\d,]*(?:\.\d+)?) acres?\b""", RegexOptions.CultureInvariant)]
    private static partial Regex Acres();
}
