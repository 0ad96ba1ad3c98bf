using System.Collections.Immutable;
using NodaTime;

namespace WorkWindows.Planning.Cases;

/// <summary>A certificate that somebody holds.</summary>
/// <param name="Title">What it is.</param>
/// <param name="ValidUntil">The last day on which it is valid; null when it does not end.</param>
public sealed record PlanCertificate(string Title, LocalDate? ValidUntil);

/// <summary>Somebody of a crew. A person may be of several crews, and works with one of them on a day.</summary>
public sealed record PlanMember
{
    public required string Id { get; init; }
    public ImmutableArray<PlanCertificate> Certificates { get; init; } = [];
    public ImmutableArray<LocalDate> DaysOff { get; init; } = [];
}

/// <summary>People who go to work together: on a day all members who are not off.</summary>
public sealed record PlanCrew
{
    public required string Id { get; init; }

    /// <summary>The place where its days begin and end; null where they begin and end at the work.</summary>
    public string? Base { get; init; }

    /// <summary>Hours of a working day, drives included; above 0 and at most 24.</summary>
    public required double HoursPerDay { get; init; }

    public required ImmutableArray<PlanMember> Members { get; init; }
    public ImmutableArray<LocalDate> DaysOff { get; init; } = [];

    /// <summary>The first day on which it works; null for any.</summary>
    public LocalDate? FirstDay { get; init; }

    public LocalDate? LastDay { get; init; }

    /// <summary>
    /// By practice, what the usual hours of a task are multiplied by when this crew does it: above 0, under 1 for a quicker
    /// one. A practice that is not named takes it the usual hours.
    /// </summary>
    public ImmutableDictionary<string, double> Paces { get; init; } = ImmutableDictionary<string, double>.Empty;

    /// <returns>What the usual hours of a task are multiplied by.</returns>
    public double PaceAt(PlanTask task) => task.Practice is { } practice ? Paces.GetValueOrDefault(practice, 1) : 1;

    /// <returns>Hours of this crew at a task.</returns>
    public double HoursOf(PlanTask task) => task.Hours * PaceAt(task);

    /// <returns>Whether the crew as a whole works on a day.</returns>
    public bool WorksOn(LocalDate day) =>
        !(day < FirstDay) && !(day > LastDay) && !DaysOff.Contains(day);

    /// <summary>Who goes to work on a day.</summary>
    public IEnumerable<PlanMember> Present(LocalDate day) => Members.Where(member => !member.DaysOff.Contains(day));
}

/// <summary>A machine or tool that one crew has on a day.</summary>
public sealed record PlanEquipment
{
    public required string Id { get; init; }
    public required string Kind { get; init; }

    /// <summary>The only crew that uses it; null where every crew may.</summary>
    public string? CrewId { get; init; }

    public ImmutableArray<LocalDate> OutOfService { get; init; } = [];
}
