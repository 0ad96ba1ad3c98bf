namespace WorkWindows.Planning.Seasons;

/// <summary>An activity whose options differ only in when they begin: so many slots in a row, the same amounts in each.</summary>
/// <param name="Length">Slots; may be 0.</param>
/// <param name="Amounts">What it takes in each slot, by resource.</param>
internal sealed record Block(int Length, IReadOnlyDictionary<int, int> Amounts)
{
    /// <returns>Null for one that is not, that is worth more or less by its start, or that may be left out.</returns>
    public static Block? Of(Activity activity)
    {
        if (activity.MayBeLeftOut || activity.Options.IsEmpty)
            return null;
        var first = activity.Options[0];
        var block = new Block(
            first.End - first.Start,
            first.Uses.Where(use => use.Slot == first.Start).ToDictionary(use => use.Resource, use => use.Amount));
        return activity.Options.All(block.Fits) ? block : null;
    }

    private bool Fits(Option option) =>
        option.End - option.Start == Length && option.Marks.IsEmpty && option.Value == 0 && option.Uses.Length == Length * Amounts.Count
        && option.Uses.All(use => use.Slot >= option.Start && use.Slot < option.End
            && Amounts.GetValueOrDefault(use.Resource, -1) == use.Amount);
}
