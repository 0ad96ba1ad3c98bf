using System.Collections.Immutable;
using System.Numerics;
using NodaTime;

namespace WorkWindows.Engine.Chances.Verification;

/// <summary>What a look back found.</summary>
/// <param name="ByLead">Scores of the days one, two, … days after the day of issue.</param>
/// <param name="Reliability">All days by the chance that was given.</param>
/// <param name="LeafOut">Leaf-out as it was told before it came.</param>
/// <param name="LeftOut">The rules that ask for what the record does not have.</param>
public sealed record BacktestResult(
    ImmutableArray<Scores> ByLead, ImmutableArray<ReliabilityBin> Reliability, ImmutableArray<LeafOutCheck> LeafOut,
    ImmutableArray<string> LeftOut)
{
    public static BacktestResult None { get; } = new([], [], [], []);

    /// <summary>Several look backs as one; of rules each that any of them leaves out is named.</summary>
    public static BacktestResult operator +(BacktestResult left, BacktestResult right) => new(
        Added(left.ByLead, right.ByLead), Added(left.Reliability, right.Reliability),
        [.. left.LeafOut, .. right.LeafOut], [.. left.LeftOut.Union(right.LeftOut).Order(StringComparer.Ordinal)]);

    private static ImmutableArray<T> Added<T>(ImmutableArray<T> left, ImmutableArray<T> right)
        where T : struct, IAdditionOperators<T, T, T> =>
        left.IsEmpty ? right : right.IsEmpty ? left : [.. left.Zip(right, (one, other) => one + other)];
}

/// <summary>Days on which about the same chance was given.</summary>
/// <param name="Days">How many days.</param>
/// <param name="ChanceSum">The sum of their chances.</param>
/// <param name="Workable">How many of them were workable.</param>
public readonly record struct ReliabilityBin(int Days, double ChanceSum, int Workable)
    : IAdditionOperators<ReliabilityBin, ReliabilityBin, ReliabilityBin>
{
    /// <summary>Tenths of a chance, each about its middle: the first and the last are half as wide.</summary>
    public const int Count = 11;

    /// <summary>The mean chance that was given; NaN without days.</summary>
    public double Chance => ChanceSum / Days;

    /// <summary>The share of the days that were workable.</summary>
    public double Share => (double)Workable / Days;

    public static int Of(double chance) => (int)Math.Round(chance * (Count - 1), MidpointRounding.AwayFromZero);

    public static ReliabilityBin operator +(ReliabilityBin left, ReliabilityBin right) =>
        new(left.Days + right.Days, left.ChanceSum + right.ChanceSum, left.Workable + right.Workable);
}

/// <summary>A leaf-out as it was told on a day before it.</summary>
/// <param name="Issued">The day.</param>
/// <param name="Came">When it came.</param>
/// <param name="P10">The date told with a chance of one in ten to come by then.</param>
/// <param name="P50">One in two.</param>
/// <param name="P90">Nine in ten.</param>
public sealed record LeafOutCheck(LocalDate Issued, LocalDate Came, LocalDate P10, LocalDate P50, LocalDate P90);
