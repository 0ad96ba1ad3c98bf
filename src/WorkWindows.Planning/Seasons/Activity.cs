using System.Collections.Immutable;

namespace WorkWindows.Planning.Seasons;

/// <summary>How much of a resource is used in a slot.</summary>
/// <param name="Resource">The resource's number.</param>
/// <param name="Slot">The slot, from 0.</param>
/// <param name="Amount">How much, in the resource's own unit.</param>
public readonly record struct Use(int Resource, int Slot, int Amount);

/// <summary>A mark that is set in a slot.</summary>
/// <param name="Mark">The mark's number.</param>
/// <param name="Slot">The slot, from 0.</param>
public readonly record struct Presence(int Mark, int Slot);

/// <summary>One way to carry out an activity.</summary>
/// <param name="Start">The slot in which it begins.</param>
/// <param name="End">The slot after its last one; at least <paramref name="Start"/>.</param>
/// <param name="Value">What it is worth, in the model's own unit.</param>
/// <param name="Uses">What it takes.</param>
/// <param name="Marks">The marks that it sets.</param>
public sealed record Option(
    int Start, int End, long Value, ImmutableArray<Use> Uses, ImmutableArray<Presence> Marks = default)
{
    public ImmutableArray<Presence> Marks { get; init; } = Marks.IsDefault ? [] : Marks;
}

/// <summary>Something to be done once, in one of several ways, or not at all.</summary>
/// <param name="Options">The ways; without any it is never done.</param>
/// <param name="After">The numbers of activities that must have ended before it begins; without them it is not done.</param>
/// <param name="MayBeLeftOut">Whether a plan without it is a plan.</param>
public sealed record Activity(ImmutableArray<Option> Options, ImmutableArray<int> After, bool MayBeLeftOut);

/// <summary>Something of which there is so much in each slot.</summary>
/// <param name="Capacity">How much, for each slot.</param>
public sealed record Resource(ImmutableArray<int> Capacity);

/// <summary>
/// Something that is there in a slot as soon as one activity sets it, however many do, such as a crew at a place: it takes
/// its own amounts once.
/// </summary>
/// <param name="UsesPerSlot">What it takes in a slot in which it is set: the resource and the amount.</param>
public sealed record Mark(ImmutableArray<(int Resource, int Amount)> UsesPerSlot);

/// <summary>What is to be planned over a number of slots.</summary>
/// <param name="Slots">How many slots there are.</param>
/// <param name="Activities">What is to be done.</param>
/// <param name="Resources">What there is.</param>
/// <param name="Marks">What is there once in a slot.</param>
/// <param name="Exclusive">Sets of marks of which at most one is set in a slot.</param>
/// <param name="MarkCosts">What each mark costs in a slot in which it is set, in the unit of values; empty for nothing.</param>
public sealed record SeasonProblem(
    int Slots, ImmutableArray<Activity> Activities, ImmutableArray<Resource> Resources,
    ImmutableArray<Mark> Marks = default, ImmutableArray<ImmutableArray<int>> Exclusive = default,
    ImmutableArray<long> MarkCosts = default)
{
    public ImmutableArray<Mark> Marks { get; init; } = Marks.IsDefault ? [] : Marks;
    public ImmutableArray<ImmutableArray<int>> Exclusive { get; init; } = Exclusive.IsDefault ? [] : Exclusive;
    public ImmutableArray<long> MarkCosts { get; init; } = MarkCosts.IsDefault ? [] : MarkCosts;

    /// <summary>The value of a plan, less what its marks cost.</summary>
    /// <param name="chosen">The option of each activity, or null.</param>
    public long ValueOf(ImmutableArray<int?> chosen)
    {
        Option[] options = [.. Activities.Zip(chosen).Where(one => one.Second is not null)
            .Select(one => one.First.Options[one.Second!.Value])];
        var marks = options.SelectMany(option => option.Marks).Distinct();
        return options.Sum(option => option.Value) - (MarkCosts.IsEmpty ? 0 : marks.Sum(mark => MarkCosts[mark.Mark]));
    }
}

/// <summary>What a plan aims at.</summary>
public enum SeasonAim
{
    /// <summary>The most value, less what marks cost.</summary>
    MostValue,

    /// <summary>The earliest end of the last activity.</summary>
    EarliestEnd,
}

/// <summary>What was found.</summary>
/// <param name="Chosen">The option of each activity, by its place; null for one that is left out.</param>
/// <param name="Objective">The value, or the slot after the last one used.</param>
/// <param name="Bound">No plan is better than this.</param>
/// <param name="IsOptimal">Whether it is proven that no plan is better.</param>
public sealed record SeasonSolution(ImmutableArray<int?> Chosen, double Objective, double Bound, bool IsOptimal);
