namespace WorkWindows.Engine.Stands.Hours;

/// <summary>
/// A softened edge of a field in treated blocks with gaps between (NRCS Ohio, job sheet 647, 2015: 30 to 50 ft deep,
/// blocks of 50 to 100 ft, gaps of 100 to 150 ft).
/// </summary>
public static class EdgeFeathering
{
    /// <summary>The blocks that begin along an edge.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A block has no length, or the edge or gap is negative.</exception>
    public static int Blocks(double edgeFt, double blockFt, double gapFt)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(edgeFt);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(blockFt);
        ArgumentOutOfRangeException.ThrowIfNegative(gapFt);
        return (int)Math.Floor((edgeFt + gapFt) / (blockFt + gapFt));
    }

    /// <summary>The area in acres of whole blocks along an edge.</summary>
    public static double Acres(double edgeFt, double blockFt, double gapFt, double depthFt) =>
        Blocks(edgeFt, blockFt, gapFt) * blockFt * depthFt / PlotFormulas.Ft2PerAcre;
}
