namespace WorkWindows.Feeds.Portfolio;

/// <summary>What the quantity of a planned task counts.</summary>
public enum QuantityUnit
{
    Acres,
    Stems,
    Feet,
    Trees,
    Hours,
}
