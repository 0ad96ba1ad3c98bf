using Google.OrTools.Sat;

namespace WorkWindows.Planning.Seasons;

/// <summary>Holds what is used within what there is.</summary>
internal static class Capacities
{
    public static void Keep(
        SeasonProblem problem, Placement[] placed, Dictionary<Presence, BoolVar> marks, CpModel model)
    {
        var used = Uses(problem, placed, marks);
        for (var resource = 0; resource < problem.Resources.Length; resource++)
        {
            var capacity = problem.Resources[resource].Capacity;
            Placement[] blocks = [.. placed.Where(place => place.Block?.Amounts.ContainsKey(resource) == true)];
            if (blocks.Length > 0)
            {
                KeepBlocks(resource, capacity.Max(), blocks, used, problem, model);
                continue;
            }
            for (var slot = 0; slot < problem.Slots; slot++)
            {
                if (used.TryGetValue((resource, slot), out var uses) && uses.Sum(use => (long)use.Amount) > capacity[slot])
                {
                    model.Add(LinearExpr.WeightedSum(
                        uses.Select(use => use.Who), uses.Select(use => (long)use.Amount)) <= capacity[slot]);
                }
            }
        }
    }

    /// <summary>What the literals of options and marks take, by resource and slot.</summary>
    private static Dictionary<(int Resource, int Slot), List<(BoolVar Who, int Amount)>> Uses(
        SeasonProblem problem, Placement[] placed, Dictionary<Presence, BoolVar> marks)
    {
        var used = new Dictionary<(int Resource, int Slot), List<(BoolVar Who, int Amount)>>();
        foreach (var (activity, place) in problem.Activities.Zip(placed))
        {
            foreach (var (option, literal) in activity.Options.Zip(place.Literals))
            {
                foreach (var use in option.Uses)
                    Add(use.Resource, use.Slot, literal, use.Amount);
            }
        }
        foreach (var (presence, mark) in marks)
        {
            foreach (var (resource, amount) in problem.Marks[presence.Mark].UsesPerSlot)
                Add(resource, presence.Slot, mark, amount);
        }
        return used;

        void Add(int resource, int slot, BoolVar who, int amount)
        {
            if (!used.TryGetValue((resource, slot), out var uses))
                used[(resource, slot)] = uses = [];
            uses.Add((who, amount));
        }
    }

    /// <summary>Intervals, with what else is used, and what is missing from the most there is, as slots that are taken.</summary>
    private static void KeepBlocks(
        int resource, int most, Placement[] blocks,
        Dictionary<(int Resource, int Slot), List<(BoolVar Who, int Amount)>> used, SeasonProblem problem, CpModel model)
    {
        var cumulative = model.AddCumulative(most);
        foreach (var block in blocks)
            cumulative.AddDemand(block.Interval!, block.Block!.Amounts[resource]);
        for (var slot = 0; slot < problem.Slots; slot++)
        {
            foreach (var (who, amount) in used.GetValueOrDefault((resource, slot), []))
                cumulative.AddDemand(model.NewOptionalFixedSizeIntervalVar(model.NewConstant(slot), 1, who, ""), amount);
            if (problem.Resources[resource].Capacity[slot] is var there && there < most)
                cumulative.AddDemand(model.NewFixedSizeIntervalVar(model.NewConstant(slot), 1, ""), most - there);
        }
    }
}
