namespace WorkWindows.Engine.Chances;

/// <summary>What the members of an ensemble say of one day.</summary>
/// <param name="Workable">How many make it workable.</param>
/// <param name="Unknown">How many leave it unknown.</param>
/// <param name="Members">How many there are.</param>
/// <param name="Share">
/// The chance that the day is workable, 0 to 1; null when too many members leave it unknown, or when there are none.
/// </param>
public readonly record struct DayChance(int Workable, int Unknown, int Members, double? Share)
{
    public int Closed => Members - Workable - Unknown;
}
