using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Chances;

/// <summary>
/// Rule packs compiled for every member of an ensemble, shared by all tasks of the place. Safe for use by several
/// threads.
/// </summary>
/// <param name="packs">The packs, higher ones first.</param>
/// <param name="ensemble">The ways in which the season may go on.</param>
public sealed class ChanceRules(ImmutableArray<RulePack> packs, Ensemble ensemble)
{
    private readonly PointRules[] members = Compiled(packs, ensemble.Members);

    public Ensemble Ensemble { get; } = ensemble;

    /// <summary>What the engine says of one task under each member, over some days of the ensemble's span.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A day lies outside the span, or there is no member.</exception>
    public TaskChances Of(TaskFacts facts, DaySpan days) =>
        new(days, Ensemble, [.. members.Select(member => Days(member.Evaluate(facts), days))]);

    /// <summary>What the rules say of a day in the first member that leaves it unknown; null when none does.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The day lies outside the span, or there is no member.</exception>
    public Explanation? Unknown(TaskFacts facts, LocalDate day) =>
        members.Select(member => member.Evaluate(facts)).FirstOrDefault(member => member[day] == DayState.Unknown)
            is { } evaluation ? Explanation.Of(evaluation, day) : null;

    private static PointRules[] Compiled(ImmutableArray<RulePack> packs, ImmutableArray<SignalSet> members)
    {
        if (members is not [var first, .. var others])
            return [];
        var rules = new PointRules(packs, first);
        return [rules, .. others.Select(member => new PointRules(rules, member))];
    }

    private static MemberDays Days(TaskEvaluation evaluation, DaySpan days)
    {
        var first = evaluation.IndexOf(days.First);
        _ = evaluation.IndexOf(days.Last);
        return new(evaluation.Workable.Slice(first, days.Count), evaluation.Unknown.Slice(first, days.Count));
    }
}

/// <summary>What one member says of a task.</summary>
/// <param name="Workable">The days that are open or limited.</param>
/// <param name="Unknown">The days that the member's weather leaves unknown.</param>
public readonly record struct MemberDays(DayBits Workable, DayBits Unknown);
