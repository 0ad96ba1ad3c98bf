using System.Numerics;
using System.Text.RegularExpressions;

namespace WorkWindows.Service.Rules;

/// <summary>Which of two versions of a pack is the higher one.</summary>
internal static partial class PackVersion
{
    /// <returns>
    /// Numbers are compared as numbers and what stands between them as text, from the left; '2026.10' is higher than
    /// '2026.9', and '2026.1' than '2026'.
    /// </returns>
    public static bool IsHigher(string version, string than)
    {
        var (mine, others) = (Parts(version), Parts(than));
        foreach (var (part, other) in mine.Zip(others))
        {
            var order = BigInteger.TryParse(part, out var number) && BigInteger.TryParse(other, out var otherNumber)
                ? number.CompareTo(otherNumber)
                : string.CompareOrdinal(part, other);
            if (order != 0)
                return order > 0;
        }
        return mine.Length > others.Length;
    }

    private static string[] Parts(string version) => [.. Part().Matches(version).Select(match => match.Value)];

    [GeneratedRegex("[0-9]+|[^0-9]+")]
    private static partial Regex Part();
}
