using System.Collections.Immutable;

namespace WorkWindows.Engine.Practices;

/// <summary>
/// What work is worth where the consultant has not said: points a unit, our own choice. They order work only against each
/// other, and every organization may set its own.
/// </summary>
public static class PracticeWeights
{
    /// <summary>Worth of work whose quantity is not known.</summary>
    public const double WithoutQuantity = 10;

    /// <summary>Units that weights are set for.</summary>
    public static ImmutableArray<string> Units { get; } = ["acres", "stems", "feet", "hours"];

    /// <summary>The unit whose weight holds: trees weigh what stems do.</summary>
    public static string Weighed(string unit) => unit == "trees" ? "stems" : unit;

    /// <param name="practice">The practice.</param>
    /// <param name="unit">acres, stems, feet, trees or hours.</param>
    /// <returns>Points a unit.</returns>
    public static double PerUnit(Practice practice, string unit) => (practice.Id, unit) switch
    {
        ("overstory-felling", "acres") => 60,
        ("overstory-felling", _) => 1.5,
        ("hinge-cut", "acres") => 50,
        ("hinge-cut", _) => 0.5,
        ("tie-down", _) => 0.25,
        ("re-cut", "acres") => 25,
        ("re-cut", _) => 0.25,
        (_, "acres") => 20,
        (_, "stems" or "trees") => 0.2,
        (_, "feet") => 0.02,
        _ => 2,
    };
}
