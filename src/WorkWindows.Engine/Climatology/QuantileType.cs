namespace WorkWindows.Engine.Climatology;

/// <summary>
/// The nine usual definitions of a quantile, types 1 to 9 of Hyndman and Fan 1996 (Am. Stat. 50:361). With thirty
/// winters they may lie a day or two apart, so that a quantile is told with its type.
/// </summary>
public enum QuantileType
{
    /// <summary>Type 1: the smallest value at or below which at least the share lies.</summary>
    InverseOfDistribution = 1,

    /// <summary>Type 2: as type 1, and the mean of two values where the share falls between them.</summary>
    AveragedInverse,

    /// <summary>Type 3: the value of the nearest rank, the even one of two.</summary>
    NearestEvenRank,

    /// <summary>Type 4: straight lines between the steps of type 1.</summary>
    LinearOfDistribution,

    /// <summary>Type 5: straight lines between the middles of the steps.</summary>
    MiddleOfSteps,

    /// <summary>Type 6: Weibull, a spreadsheet's PERCENTILE.EXC.</summary>
    Weibull,

    /// <summary>Type 7: the default of many programs, a spreadsheet's PERCENTILE.INC.</summary>
    Linear,

    /// <summary>Type 8: unbiased for the median whatever the distribution; the one used here.</summary>
    MedianUnbiased,

    /// <summary>Type 9: nearly unbiased for normal values.</summary>
    NormalUnbiased,
}
