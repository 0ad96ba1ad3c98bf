using System.Numerics;

namespace WorkWindows.Engine.Chances.Verification;

/// <summary>Sums of squared errors of chances, for Brier scores.</summary>
/// <param name="Days">How many days.</param>
/// <param name="SquaredErrors">Sum over the days of (chance − outcome)², the outcome being 1 for workable.</param>
/// <param name="OfClimatology">The same for the share of the other years.</param>
/// <param name="OfSmoothed">The same for that share, drawn towards the days around as chances are.</param>
public readonly record struct Scores(int Days, double SquaredErrors, double OfClimatology, double OfSmoothed)
    : IAdditionOperators<Scores, Scores, Scores>
{
    /// <summary>Brier score, 0 (perfect) to 1; NaN without days.</summary>
    public double Brier => SquaredErrors / Days;

    public double BrierOfClimatology => OfClimatology / Days;

    /// <summary>Brier skill score against climatology: 1 is perfect, 0 no better.</summary>
    public double Skill => 1 - SquaredErrors / OfClimatology;

    /// <summary>The part of the skill that is not that of drawing days towards the days around.</summary>
    public double SkillOverSmoothed => 1 - SquaredErrors / OfSmoothed;

    public static Scores operator +(Scores left, Scores right) => new(
        left.Days + right.Days, left.SquaredErrors + right.SquaredErrors, left.OfClimatology + right.OfClimatology,
        left.OfSmoothed + right.OfSmoothed);
}
