using System.Collections.Immutable;
using System.Globalization;
using Google.OrTools.Sat;

namespace WorkWindows.Planning.Seasons;

/// <summary>
/// Chooses one option for each activity with the CP-SAT solver of OR-Tools, so that nothing is used beyond what there is.
/// </summary>
/// <remarks>Source: docs/rules/crew-plans.md.</remarks>
public static class SeasonModel
{
    /// <param name="problem">What is to be planned.</param>
    /// <param name="aim">What a plan aims at.</param>
    /// <param name="limits">How long to search.</param>
    /// <param name="hint">A plan to begin from: the option of each activity, or null; empty for none.</param>
    /// <returns>The best plan found; null when there is none, or none was found in time.</returns>
    public static SeasonSolution? Solve(
        SeasonProblem problem, SeasonAim aim, PlanLimits limits, ImmutableArray<int?> hint = default)
    {
        var model = new CpModel();
        Placement[] placed = [.. problem.Activities.Select(activity => Placement.Of(activity, model))];
        var marks = MarkVariables(problem, placed, model);
        KeepOrder(problem, placed, model);
        Capacities.Keep(problem, placed, marks, model);
        KeepApart(problem, marks, model);
        if (aim == SeasonAim.MostValue)
            model.Maximize(Value(problem, placed, marks));
        else
            AimAtEnd(problem, placed, model);
        for (var activity = 0; activity < placed.Length && !hint.IsDefaultOrEmpty; activity++)
            placed[activity].Hint(hint[activity], model);
        var solver = new CpSolver { StringParameters = Parameters(limits) };
        var status = solver.Solve(model);
        return status is CpSolverStatus.Optimal or CpSolverStatus.Feasible
            ? new(
                [.. placed.Select(activity => activity.Chosen(solver))], solver.ObjectiveValue, solver.BestObjectiveBound,
                status == CpSolverStatus.Optimal)
            : null;
    }

    private static string Parameters(PlanLimits limits) => string.Create(
        CultureInfo.InvariantCulture,
        $"num_workers:{limits.Workers} random_seed:{limits.Seed} max_time_in_seconds:{limits.Seconds} "
        + $"max_deterministic_time:{limits.Effort} interleave_search:{(limits.Workers > 1 ? "true" : "false")}");

    /// <summary>Marks that some option can set, by mark and slot.</summary>
    private static Dictionary<Presence, BoolVar> MarkVariables(SeasonProblem problem, Placement[] placed, CpModel model)
    {
        var variables = new Dictionary<Presence, BoolVar>();
        foreach (var (activity, place) in problem.Activities.Zip(placed))
        {
            foreach (var (option, literal) in activity.Options.Zip(place.Literals))
            {
                foreach (var presence in option.Marks)
                {
                    if (!variables.TryGetValue(presence, out var mark))
                        variables[presence] = mark = model.NewBoolVar("");
                    model.AddImplication(literal, mark);
                }
            }
        }
        return variables;
    }

    /// <summary>
    /// Between literals, for each slot: what has begun by then needs that what comes first has ended by then. This form is
    /// much tighter than one of start and end.
    /// </summary>
    private static void KeepOrder(SeasonProblem problem, Placement[] placed, CpModel model)
    {
        for (var later = 0; later < placed.Length; later++)
        {
            foreach (var first in problem.Activities[later].After)
            {
                if (placed[first].Block is not null || placed[later].Block is not null)
                {
                    KeepBlocksInOrder(problem.Activities[later], placed[later], placed[first], model);
                    continue;
                }
                foreach (var slot in problem.Activities[later].Options.Select(option => option.Start).Distinct().Order())
                {
                    model.Add(LinearExpr.Sum(placed[later].Of(option => option.Start <= slot))
                        <= LinearExpr.Sum(placed[first].Of(option => option.End <= slot)));
                }
            }
        }
    }

    private static void KeepBlocksInOrder(Activity later, Placement place, Placement first, CpModel model)
    {
        if (place.Block is not null)
        {
            model.Add(place.Start >= first.End);
            if (first.Block is null)
                model.AddExactlyOne(first.Literals);
            return;
        }
        foreach (var (option, literal) in later.Options.Zip(place.Literals))
            model.Add(first.End <= option.Start).OnlyEnforceIf(literal);
    }

    private static void KeepApart(SeasonProblem problem, Dictionary<Presence, BoolVar> marks, CpModel model)
    {
        var slots = marks.Keys.Select(presence => presence.Slot).Distinct().Order().ToArray();
        foreach (var set in problem.Exclusive)
        {
            foreach (var slot in slots)
            {
                var present = set.Select(mark => marks.GetValueOrDefault(new(mark, slot))).OfType<BoolVar>().ToArray();
                if (present.Length > 1)
                    model.AddAtMostOne(present);
            }
        }
    }

    private static LinearExpr Value(SeasonProblem problem, Placement[] placed, Dictionary<Presence, BoolVar> marks)
    {
        var (who, worth) = (new List<BoolVar>(), new List<long>());
        foreach (var (activity, place) in problem.Activities.Zip(placed))
        {
            who.AddRange(place.Literals);
            worth.AddRange(activity.Options.Take(place.Literals.Length).Select(option => option.Value));
        }
        if (!problem.MarkCosts.IsEmpty)
        {
            foreach (var (presence, mark) in marks)
            {
                who.Add(mark);
                worth.Add(-problem.MarkCosts[presence.Mark]);
            }
        }
        return LinearExpr.WeightedSum(who, worth);
    }

    /// <summary>
    /// The end, with what follows from the amounts alone: all that is used fits into what there is until then. It is not
    /// needed for a right answer, and makes the proof of one some ten times faster.
    /// </summary>
    private static void AimAtEnd(SeasonProblem problem, Placement[] placed, CpModel model)
    {
        var end = model.NewIntVar(0, problem.Slots, "end");
        foreach (var place in placed)
            model.Add(end >= place.End);
        for (var resource = 0; resource < problem.Resources.Length; resource++)
        {
            var least = problem.Activities.Where(activity => !activity.MayBeLeftOut && !activity.Options.IsEmpty)
                .Sum(activity => activity.Options.Min(option => option.Uses.Where(use => use.Resource == resource)
                    .Sum(use => (long)use.Amount)));
            var most = problem.Resources[resource].Capacity.Max();
            if (most > 0)
                model.Add(most * end >= least);
        }
        model.Minimize(end);
    }
}
