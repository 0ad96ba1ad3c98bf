using System.Globalization;

namespace WorkWindows.Service.Windows;

/// <summary>How pages write areas.</summary>
public static class AreaWords
{
    /// <summary>Square metres of an international acre: 4840 square yards of 0.9144 m (NIST Handbook 44, appendix C).</summary>
    public const double SquareMetresPerAcre = 4_046.8564224;

    /// <summary>As in 40.2 acres.</summary>
    /// <param name="areaM2">Square metres.</param>
    public static string Of(double areaM2) => string.Create(CultureInfo.InvariantCulture, $"{areaM2 / SquareMetresPerAcre:0.#} acres");
}
