using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Practices;

namespace WorkWindows.Service.Windows;

/// <summary>A planned task with what is needed to speak of it, and its evaluation.</summary>
public sealed record EvaluatedTask(TaskSummary Task, TaskEvaluation Evaluation);

/// <summary>A planned task, its parcel and its property in one row.</summary>
/// <param name="Id">The task.</param>
/// <param name="Key">The organization's own name for it.</param>
/// <param name="Practice">The kind of work.</param>
/// <param name="ParcelId">Its parcel.</param>
/// <param name="ParcelName">The parcel's name.</param>
/// <param name="PropertyId">Its property.</param>
/// <param name="PropertyName">The property's name.</param>
/// <param name="Zone">The time zone whose days the verdicts are about.</param>
/// <param name="LandownerId">The property's owner, where one is known.</param>
/// <param name="CrewLeadId">The crew lead, where one is set.</param>
/// <param name="CrewSize">How many people.</param>
/// <param name="Quantity">How much, in <paramref name="QuantityUnit"/>, where it is given.</param>
/// <param name="QuantityUnit">What the quantity counts.</param>
/// <param name="Deadline">The last day on which it may be done, if there is one.</param>
/// <param name="ScheduledOn">The day it is meant to be done on, if one is set.</param>
/// <param name="CompletedOn">The day it was done on.</param>
public sealed record TaskSummary(
    Guid Id,
    string Key,
    Practice Practice,
    Guid ParcelId,
    string ParcelName,
    Guid PropertyId,
    string PropertyName,
    DateTimeZone Zone,
    Guid? LandownerId,
    Guid? CrewLeadId,
    int CrewSize,
    decimal? Quantity,
    string? QuantityUnit,
    LocalDate? Deadline,
    LocalDate? ScheduledOn,
    LocalDate? CompletedOn)
{
    /// <summary>The first day on which it may be done, if there is one.</summary>
    public LocalDate? NotBefore { get; init; }

    /// <summary>Who leads the crew that is booked, by day, from the first day evaluated on.</summary>
    public IReadOnlyDictionary<LocalDate, Guid> BookedLeads { get; init; } = new Dictionary<LocalDate, Guid>();

    /// <summary>Who leads the work on a day: the lead of the crew that is booked, else that of the task.</summary>
    public Guid? LeadOn(LocalDate day) => BookedLeads.TryGetValue(day, out var lead) ? lead : CrewLeadId;

    /// <summary>The kinds of the work that must be done first and has not been recorded as done.</summary>
    public IReadOnlyList<string> WaitsFor { get; init; } = [];
}
