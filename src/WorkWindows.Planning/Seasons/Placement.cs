using Google.OrTools.Sat;
using Google.OrTools.Util;

namespace WorkWindows.Planning.Seasons;

/// <summary>
/// An activity in the solver: by the slot in which it begins where its options differ in nothing else, by one literal an
/// option otherwise.
/// </summary>
internal sealed class Placement
{
    private readonly Activity activity;
    private readonly IntVar? start;

    private Placement(Activity activity, Block? block, IntVar? start, IntervalVar? interval, BoolVar[] literals) =>
        (this.activity, Block, this.start, Interval, Literals) = (activity, block, start, interval, literals);

    /// <summary>What it takes from slot to slot; null where it has a literal an option.</summary>
    public Block? Block { get; }

    public IntervalVar? Interval { get; }

    /// <summary>One an option; none where it has a block.</summary>
    public BoolVar[] Literals { get; }

    public LinearExpr Start => start is null
        ? LinearExpr.WeightedSum(Literals, activity.Options.Select(option => (long)option.Start))
        : start;

    public LinearExpr End => start is null
        ? LinearExpr.WeightedSum(Literals, activity.Options.Select(option => (long)option.End))
        : start + Block!.Length;

    public static Placement Of(Activity activity, CpModel model)
    {
        if (Block.Of(activity) is { } block)
        {
            var start = model.NewIntVarFromDomain(
                Domain.FromValues([.. activity.Options.Select(option => (long)option.Start)]), "");
            return new(activity, block, start, model.NewFixedSizeIntervalVar(start, block.Length, ""), []);
        }
        BoolVar[] literals = [.. activity.Options.Select(_ => model.NewBoolVar(""))];
        if (activity.MayBeLeftOut)
            model.AddAtMostOne(literals);
        else
            model.AddExactlyOne(literals);
        return new(activity, null, null, null, literals);
    }

    /// <summary>The literals of options that fit.</summary>
    public IEnumerable<BoolVar> Of(Func<Option, bool> fits) =>
        activity.Options.Zip(Literals).Where(one => fits(one.First)).Select(one => one.Second);

    /// <returns>The place of the option that was chosen; null where none was.</returns>
    public int? Chosen(CpSolver solver)
    {
        if (start is null)
            return Array.FindIndex(Literals, solver.BooleanValue) is >= 0 and var index ? index : null;
        var at = (int)solver.Value(start);
        return activity.Options.Select(option => option.Start).ToList().IndexOf(at);
    }

    public void Hint(int? option, CpModel model)
    {
        for (var index = 0; index < Literals.Length; index++)
            model.AddHint(Literals[index], index == option);
    }
}
