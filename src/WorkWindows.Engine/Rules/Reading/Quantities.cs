namespace WorkWindows.Engine.Rules.Reading;

/// <summary>Reads numbers with their unit.</summary>
internal static class Quantities
{
    public static Threshold? Read(Entry entry, IReadOnlyDictionary<string, RuleUnit> units)
    {
        var quantity = RuleUnits.Parse(entry.Text, units, out var accepted);
        if (quantity is null)
            entry.Refuse(accepted);
        return quantity;
    }
}
