using System.Collections.Immutable;

namespace WorkWindows.Engine.Phenology;

/// <summary>
/// Shrinks several predictions of a day and the earlier springs of a place together. Source: docs/rules/leaf-out.md.
/// </summary>
internal static class SpringMix
{
    /// <summary>The standard deviation of places about a prediction, days.</summary>
    public const double BetweenPlacesSdDays = 6;

    /// <summary>
    /// As many springs stand behind the variances before the place's own do, so that those of a place that is told well
    /// shrink.
    /// </summary>
    public const double PriorSprings = 2;

    /// <summary>One prediction.</summary>
    /// <param name="Day">The day of the year that it gives for the year asked for.</param>
    /// <param name="ResidualSdDays">How far years lie about it at one place, as a standard deviation.</param>
    /// <param name="SpreadDays">What the weather to come may change, as a standard deviation.</param>
    /// <param name="EarlierErrorsDays">Seen less predicted day of each earlier spring.</param>
    public sealed record Candidate(
        double Day, double ResidualSdDays, double SpreadDays, ImmutableArray<double> EarlierErrorsDays);

    /// <summary>The mean day of the year and its standard deviation, days.</summary>
    /// <param name="candidates">At least one, all with the same earlier springs.</param>
    /// <remarks>
    /// Each prediction is corrected by the place's mean error, shrunk towards none in the ratio of the variances. Its
    /// weight is its precision times the likelihood of the earlier springs under it. Its variance is scaled by how far
    /// these lay from it, as a share of what was expected.
    /// </remarks>
    public static (double Day, double SdDays) Of(ImmutableArray<Candidate> candidates)
    {
        var parts = candidates.Select(Corrected).ToList();
        var best = parts.Max(part => part.LogWeight);
        var weights = parts.Select(part => Math.Exp(part.LogWeight - best)).ToList();
        var total = weights.Sum();
        var (mean, square) = (0.0, 0.0);
        foreach (var (part, weight) in parts.Zip(weights))
        {
            mean += weight / total * part.Day;
            square += weight / total * (part.Variance + part.Day * part.Day);
        }
        return (mean, Math.Sqrt(square - mean * mean));
    }

    private static (double Day, double Variance, double LogWeight) Corrected(Candidate candidate)
    {
        var residual = candidate.ResidualSdDays * candidate.ResidualSdDays;
        var (correction, variance) = (0.0, BetweenPlacesSdDays * BetweenPlacesSdDays);
        var logWeight = -Math.Log(residual);
        var surprises = PriorSprings;
        // Spring by spring, which gives the same as all at once.
        foreach (var error in candidate.EarlierErrorsDays)
        {
            var (surprise, expected) = (error - correction, variance + residual);
            surprises += surprise * surprise / expected;
            logWeight -= (Math.Log(expected) + surprise * surprise / expected) / 2;
            correction += variance / expected * surprise;
            variance *= residual / expected;
        }
        var scale = surprises / (PriorSprings + candidate.EarlierErrorsDays.Length);
        var spread = candidate.SpreadDays * candidate.SpreadDays;
        return (candidate.Day + correction, scale * (variance + residual) + spread, logWeight);
    }
}
