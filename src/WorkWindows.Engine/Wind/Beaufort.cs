using System.Collections.Immutable;

namespace WorkWindows.Engine.Wind;

/// <summary>
/// The Beaufort scale, which tells wind by what it does to trees. Source: docs/rules/wind.md; forces 0 to 2, 11 and 12
/// are from memory.
/// </summary>
public static class Beaufort
{
    // The lowest whole mph of each force from 1 on.
    private static readonly ImmutableArray<double> FromMph = [1, 4, 8, 13, 19, 25, 32, 39, 47, 55, 64, 73];

    /// <summary>The force of a sustained wind.</summary>
    /// <param name="windMph">mph. The scale is one of whole miles: a fraction has the force of the one below.</param>
    /// <returns>0 to 12, or null when the wind is NaN.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The wind is negative.</exception>
    public static int? ForceOf(double windMph)
    {
        if (double.IsNaN(windMph))
            return null;
        ArgumentOutOfRangeException.ThrowIfNegative(windMph);
        return FromMph.Count(fromMph => windMph >= fromMph);
    }
}
