namespace WorkWindows.Engine.Stands;

/// <summary>From what was tallied to what stands on an acre. Textbook formulas, from memory; docs/rules/stands.md.</summary>
public static class PlotFormulas
{
    public const double Ft2PerAcre = 43_560;

    /// <summary>Stems an acre from a count on a plot.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The plot has no area.</exception>
    public static double StemsPerAcre(double count, double plotFt2)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(plotFt2);
        return count * Ft2PerAcre / plotFt2;
    }

    /// <summary>The radius in feet of a round plot of a share of an acre.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The plot has no area.</exception>
    public static double PlotRadiusFt(double acres)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(acres);
        return Math.Sqrt(acres * Ft2PerAcre / Math.PI);
    }

    /// <summary>Basal area an acre, in square feet, from a count with a prism or gauge.</summary>
    /// <param name="count">Trees counted in.</param>
    /// <param name="factorFt2PerAcre">The basal area factor, such as 10.</param>
    public static double PrismBasalAreaFt2PerAcre(double count, double factorFt2PerAcre) => count * factorFt2PerAcre;

    /// <summary>The stems an acre that one counted tree stands for.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The tree has no diameter.</exception>
    public static double StemsPerCountedTree(double factorFt2PerAcre, double dbhIn)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(dbhIn);
        return factorFt2PerAcre / TreeFormulas.BasalAreaFt2(dbhIn);
    }

    /// <summary>Feet from a tree's centre for each inch of its diameter within which it is counted in.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The factor is not above 0.</exception>
    public static double PlotRadiusFactorFtPerIn(double factorFt2PerAcre)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(factorFt2PerAcre);
        return 8.696 / Math.Sqrt(factorFt2PerAcre);
    }

    /// <summary>Stems an acre at a square spacing.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no spacing.</exception>
    public static double StemsPerAcreAt(double spacingFt)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(spacingFt);
        return Ft2PerAcre / (spacingFt * spacingFt);
    }
}
