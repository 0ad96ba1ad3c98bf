namespace WorkWindows.Planning.Cases;

/// <summary>What a plan weighs against the benefit of tasks, in the same points. The values are our own choice.</summary>
public sealed record PlanWeights
{
    /// <summary>Points that an hour of driving costs.</summary>
    public double PointsPerTravelHour { get; init; } = 1;

    /// <summary>Points that it costs to change a day that people were told of.</summary>
    public double PointsPerChange { get; init; } = 2;

    /// <summary>
    /// The share of a task's benefit that it loses from the first day of the case to the last: of two days as likely, the
    /// earlier one leaves time to try again.
    /// </summary>
    public double LateShare { get; init; } = 0.4;

    /// <summary>The part of that which work loses that was told to somebody, by each day later than it was told.</summary>
    public double ToldLateShare { get; init; } = 0.1;
}
