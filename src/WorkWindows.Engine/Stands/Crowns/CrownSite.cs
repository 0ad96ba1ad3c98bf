namespace WorkWindows.Engine.Stands.Crowns;

/// <summary>What the crowns of a place depend on besides species and size.</summary>
/// <param name="LiveCrownPercent">The part of a tree's height that has living branches, percent.</param>
/// <param name="HopkinsIndex">How much later spring is than at the reference place, in days.</param>
/// <param name="CrownIsAssumed">Whether nobody measured the live crown.</param>
public sealed record CrownSite(double LiveCrownPercent, double HopkinsIndex, bool CrownIsAssumed)
{
    /// <summary>The ratio with which the tables of this project are worked out; inventories seldom have it.</summary>
    public const double AssumedLiveCrownPercent = 40;

    /// <summary>A place whose live crowns were not measured.</summary>
    public static CrownSite Assumed(double hopkinsIndex) => new(AssumedLiveCrownPercent, hopkinsIndex, CrownIsAssumed: true);

    /// <summary>Hopkins' bioclimatic index as Bechtold 2003 uses it.</summary>
    /// <param name="elevationFt">Feet above the sea.</param>
    /// <param name="latitudeDeg">Degrees north.</param>
    /// <param name="longitudeDeg">Degrees east, so negative in America.</param>
    public static double Hopkins(double elevationFt, double latitudeDeg, double longitudeDeg) =>
        ((elevationFt - 887) / 100) + (4 * (latitudeDeg - 39.54)) + (1.25 * (-82.52 - longitudeDeg));
}
