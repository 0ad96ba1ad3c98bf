namespace WorkWindows.Engine.Stands;

/// <summary>What one tree takes up, by its diameter at breast height. Source: docs/rules/stands.md.</summary>
public static class TreeFormulas
{
    private const double SquareInchesPerSquareFoot = 144;

    /// <summary>Basal area in square feet: the circle of the diameter, π/576 D².</summary>
    public static double BasalAreaFt2(double dbhIn) => Math.PI / 4 * dbhIn * dbhIn / SquareInchesPerSquareFoot;

    /// <summary>
    /// The crown of an open-grown oak or hickory in percent of an acre (Krajicek, Brinkman and Gingrich 1961, from
    /// memory). Its sum over a stand is the crown competition factor.
    /// </summary>
    public static double MaximumCrownAreaPercent(double dbhIn) => 0.0175 + (0.0205 * dbhIn) + (0.0060 * dbhIn * dbhIn);

    /// <summary>
    /// What a tree of upland oak forest adds to stocking, in percent of the A-level (Gingrich 1967, from memory). Below
    /// 0.3 in the equation is negative, and a tree adds nothing.
    /// </summary>
    public static double GingrichStockingPercent(double dbhIn) =>
        Math.Max(0, -0.00507 + (0.01698 * dbhIn) + (0.00317 * dbhIn * dbhIn));

    /// <summary>The circle of a crown in percent of an acre (USDA Forest Service, Forest Vegetation Simulator).</summary>
    public static double CrownAreaPercent(double crownWidthFt) => 0.001803 * crownWidthFt * crownWidthFt;
}
