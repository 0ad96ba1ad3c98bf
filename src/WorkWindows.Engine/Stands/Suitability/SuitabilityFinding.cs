using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Stands.Suitability;

/// <summary>Whether something fits the work.</summary>
public enum Fit
{
    Fits,

    /// <summary>It fits with the care that is named.</summary>
    WithCare,

    /// <summary>It is not done.</summary>
    No,

    /// <summary>What would decide it is not known.</summary>
    Unknown,
}

/// <summary>One thing to know before a stand is cut.</summary>
/// <param name="Key">What it is about, lower case with hyphens.</param>
/// <param name="Fit">Whether it fits.</param>
/// <param name="Says">In whole sentences.</param>
/// <param name="Authority">How well founded it is.</param>
/// <param name="Source">Where it is stated.</param>
public sealed record SuitabilityFinding(string Key, Fit Fit, string Says, Authority Authority, string Source);
