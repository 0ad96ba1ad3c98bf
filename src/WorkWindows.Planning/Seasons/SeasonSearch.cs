using System.Collections.Immutable;
using System.Diagnostics;

namespace WorkWindows.Planning.Seasons;

/// <summary>
/// Looks for the most value: small problems whole, large ones part by part, each part solved anew while the rest of the
/// plan stays (large neighbourhood search, P. Shaw, Principles and Practice of Constraint Programming 1998).
/// </summary>
public static class SeasonSearch
{
    /// <summary>Up to so many options a problem is solved whole.</summary>
    private const int MostWhole = 6_000;

    /// <summary>Options of a part: more take longer than they bring.</summary>
    private const int MostInPart = 6_000;

    /// <summary>The solver's effort on a part, see <see cref="PlanLimits.Effort"/>.</summary>
    private const double EffortOnPart = 0.5;

    /// <param name="problem">What is to be planned; leaving everything out must be a plan but for single options.</param>
    /// <param name="limits">How long to search.</param>
    /// <returns>The best plan found. Its bound is endless where the problem was not solved whole.</returns>
    public static SeasonSolution Solve(SeasonProblem problem, PlanLimits limits)
    {
        var first = FirstPlan.Of(problem);
        return problem.Activities.Sum(activity => activity.Options.Length) <= MostWhole
            ? SeasonModel.Solve(problem, SeasonAim.MostValue, limits, first) ?? Found(problem, first)
            : ByParts(problem, limits, first);
    }

    private static SeasonSolution Found(SeasonProblem problem, ImmutableArray<int?> chosen) =>
        new(chosen, problem.ValueOf(chosen), double.PositiveInfinity, IsOptimal: false);

    private static SeasonSolution ByParts(SeasonProblem problem, PlanLimits limits, ImmutableArray<int?> chosen)
    {
        var random = new Random(limits.Seed);
        var clock = Stopwatch.StartNew();
        var best = Found(problem, chosen);
        // A plan is to come out the same on every machine, so that effort is counted and not time.
        for (var spent = 0.0; spent < limits.Effort && clock.Elapsed.TotalSeconds < limits.Seconds; spent += EffortOnPart)
        {
            var part = Part(problem, best.Chosen, random);
            var within = limits with
            {
                Effort = EffortOnPart,
                Seconds = Math.Max(0.1, limits.Seconds - clock.Elapsed.TotalSeconds),
                Seed = random.Next(),
            };
            var (fewer, hint) = Without(problem, best.Chosen, part);
            if (SeasonModel.Solve(fewer, SeasonAim.MostValue, within, hint) is { } found && found.Objective > best.Objective + 0.5)
                best = Found(problem, [.. best.Chosen.Select((old, activity) => part.Contains(activity) ? found.Chosen[activity] : old)]);
        }
        return best;
    }

    /// <summary>
    /// Activities to be planned anew: those of a stretch of slots, or those that use a few of the resources, and some of
    /// those that are left out.
    /// </summary>
    private static HashSet<int> Part(SeasonProblem problem, ImmutableArray<int?> chosen, Random random)
    {
        var drawn = Enumerable.Range(0, chosen.Length).Where(activity => problem.Activities[activity].MayBeLeftOut).ToArray();
        random.Shuffle(drawn);
        var from = random.Next(problem.Slots);
        var stretch = Math.Max(3, problem.Slots / (2 + random.Next(6)));
        var resources = Enumerable.Range(0, 2 + random.Next(2)).Select(_ => random.Next(problem.Resources.Length)).ToHashSet();
        var byTime = random.Next(2) == 0;
        var near = drawn.Where(activity => chosen[activity] is { } option && IsNear(problem.Activities[activity].Options[option]));
        var left = drawn.Where(activity => chosen[activity] is null);
        var part = new HashSet<int>();
        var options = 0;
        // Turn by turn, so that what is left out has something to take the place of.
        foreach (var activity in near.Zip(left.Concat(Enumerable.Repeat(-1, drawn.Length)), (one, other) => new[] { one, other })
            .SelectMany(both => both).Where(activity => activity >= 0))
        {
            options += problem.Activities[activity].Options.Length;
            if (options > MostInPart)
                break;
            part.Add(activity);
        }
        return part;

        bool IsNear(Option option) => byTime
            ? option.Start < from + stretch && option.End > from
            : option.Uses.Any(use => resources.Contains(use.Resource));
    }

    /// <summary>The problem in which all but a part stays as it is: what is chosen of it is the one way that is left.</summary>
    private static (SeasonProblem Problem, ImmutableArray<int?> Hint) Without(
        SeasonProblem problem, ImmutableArray<int?> chosen, HashSet<int> part)
    {
        var activities = problem.Activities.Select((activity, index) => part.Contains(index) || !activity.MayBeLeftOut
            ? activity
            : activity with
            {
                Options = chosen[index] is { } option ? [activity.Options[option]] : [],
                MayBeLeftOut = chosen[index] is null,
            });
        var hint = chosen.Select((option, index) => part.Contains(index) ? option : option is null ? (int?)null : 0);
        return (problem with { Activities = [.. activities] }, [.. hint]);
    }
}
