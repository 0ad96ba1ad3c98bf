using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Chances.Verification;

/// <summary>Counts what a look back finds.</summary>
internal sealed class BacktestTally(int leadDays)
{
    private readonly Scores[] byLead = new Scores[leadDays];
    private readonly ReliabilityBin[] bins = new ReliabilityBin[ReliabilityBin.Count];
    private readonly List<LeafOutCheck> leafOuts = [];

    public int LeadDays { get; } = leadDays;

    /// <param name="lead">Days after the day of issue.</param>
    /// <param name="chance">The chance that was given, 0 to 1.</param>
    /// <param name="climatology">The share of the other years.</param>
    /// <param name="smoothed">The same, drawn towards the days around.</param>
    /// <param name="workable">What came.</param>
    public void Add(int lead, double chance, double climatology, double smoothed, bool workable)
    {
        var outcome = workable ? 1.0 : 0.0;
        byLead[lead - 1] += new Scores(
            1, Square(chance - outcome), Square(climatology - outcome), Square(smoothed - outcome));
        bins[ReliabilityBin.Of(chance)] += new ReliabilityBin(1, chance, workable ? 1 : 0);
    }

    public void AddLeafOut(LocalDate issued, Ensemble ensemble, LocalDate? came)
    {
        if (came is not { } date)
            return;
        var told = DateSpread.Of(
            ensemble.Members.Select(member => member.Event(SeasonEventKind.LeafOut, issued.Year)?.Date));
        if (told is { P10: { } early, P50: { } middle, P90: { } late } && told.Happens == told.Members)
            leafOuts.Add(new(issued, date, early, middle, late));
    }

    public BacktestResult Result(ImmutableArray<string> leftOut) => new([.. byLead], [.. bins], [.. leafOuts], leftOut);

    private static double Square(double error) => error * error;
}
