namespace WorkWindows.Planning;

/// <summary>How long to search, and how to repeat a search.</summary>
public sealed record PlanLimits
{
    /// <summary>Equal seeds and equal cases give equal plans, as long as the clock did not end the search.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>The solver's own measure of work, about a second each; the same on every machine.</summary>
    public double Effort { get; init; } = 20;

    /// <summary>The most seconds by the clock; a search that it ends may end differently the next time.</summary>
    public double Seconds { get; init; } = 60;

    /// <summary>Threads that search; they take turns in an order of their own, so that a search can be repeated.</summary>
    public int Workers { get; init; } = 2;
}
