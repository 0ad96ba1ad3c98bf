using System.Collections.Immutable;
using WorkWindows.Planning.Cases;

namespace WorkWindows.Planning.Crews;

/// <summary>Why a task is in no crew's days.</summary>
public enum LeftOutBecause
{
    /// <summary>No day of the plan is workable.</summary>
    NoWorkableDay,

    /// <summary>Its workable days are before its first day or after its deadline.</summary>
    OutsideItsDates,

    /// <summary>No crew works on its workable days.</summary>
    NoCrew,

    /// <summary>No crew has enough people on its workable days.</summary>
    TooFewPeople,

    /// <summary>Nobody holds a certificate on its workable days.</summary>
    NoCertificate,

    /// <summary>Equipment is not to be had on its workable days.</summary>
    NoEquipment,

    /// <summary>The drive leaves no time.</summary>
    TooFar,

    /// <summary>It takes more days than are workable close to each other.</summary>
    TooLong,

    /// <summary>What must come first is left out, or ends too late.</summary>
    WaitsForOther,

    /// <summary>It brings less than it would cost in driving and in changes.</summary>
    NotWorthIt,

    /// <summary>The crews have other work that brings more.</summary>
    CrewsFull,
}

/// <summary>A task that a plan leaves out, or does in part.</summary>
/// <param name="TaskId">The task.</param>
/// <param name="Because">Why.</param>
/// <param name="Says">The same in a sentence, without the name of the task.</param>
public sealed record LeftOut(string TaskId, LeftOutBecause Because, string Says);

/// <summary>Who does what on which day.</summary>
/// <param name="Bookings">By day, crew and place in the day.</param>
/// <param name="LeftOut">Tasks that nobody does, in the order of the case.</param>
/// <param name="Objective">Points: expected benefit, less what travel, lateness and changes cost.</param>
/// <param name="Bound">No plan of the kind that is searched has more points than this: docs/rules/crew-plans.md.</param>
/// <param name="IsOptimal">Whether it is proven that none of that kind has more points than this one.</param>
/// <param name="ExpectedBenefit">Points of the tasks, each times the mean chance of its days.</param>
/// <param name="TravelMinutes">What the crews drive.</param>
/// <param name="Changes">How many announced days are not kept.</param>
/// <param name="Seed">What repeats it.</param>
public sealed record CrewPlan(
    ImmutableArray<Booking> Bookings, ImmutableArray<LeftOut> LeftOut, double Objective, double Bound, bool IsOptimal,
    double ExpectedBenefit, double TravelMinutes, int Changes, int Seed)
{
    /// <summary>How far the objective may be from the best, as a share of the bound; 0 when it is the best.</summary>
    public double Gap => IsOptimal || !(Bound > 0) ? 0 : Math.Max(0, (Bound - Objective) / Bound);
}
