namespace WorkWindows.Engine.Stands.Hours;

/// <summary>
/// How a crew's hours compare with the estimates, from its own records. Our own formula: the geometric mean of the
/// recorded ratios, drawn towards 1 as if <see cref="Doubt"/> more jobs had gone as estimated.
/// </summary>
public static class CrewPace
{
    /// <summary>Jobs that the estimate weighs: our own choice.</summary>
    public const int Doubt = 3;

    /// <param name="jobs">Hours estimated, the middle of their range, and hours taken, of each job.</param>
    /// <returns>What estimates are multiplied by; 1 without records.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Hours are not above 0.</exception>
    public static double Of(IReadOnlyCollection<(double EstimatedHours, double TakenHours)> jobs)
    {
        if (jobs.Any(job => !(job.EstimatedHours > 0) || !(job.TakenHours > 0)))
            throw new ArgumentOutOfRangeException(nameof(jobs), "A job takes more than no hours.");
        var logs = jobs.Sum(job => Math.Log(job.TakenHours / job.EstimatedHours));
        return Math.Exp(logs / (jobs.Count + Doubt));
    }
}
