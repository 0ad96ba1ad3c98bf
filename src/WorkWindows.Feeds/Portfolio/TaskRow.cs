using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Practices;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>One row of a task file.</summary>
/// <param name="Line">Where it stands in the file.</param>
/// <param name="Key">Its own key, unique within the file.</param>
/// <param name="Parcel">The key of its parcel.</param>
/// <param name="Practice">The kind of work.</param>
/// <param name="Quantity">How much, above 0, in <paramref name="Unit"/>.</param>
/// <param name="Unit">What the quantity counts.</param>
/// <param name="CrewSize">How many people, at least 1.</param>
/// <param name="Deadline">The last day on which it may be done, if there is one.</param>
/// <param name="ScheduledOn">The day on which it is meant to be done, if one is set.</param>
/// <param name="Prerequisites">Keys of the tasks that come first.</param>
/// <param name="CrewLead">Mail address of the crew lead, if one is set.</param>
public sealed record TaskRow(
    int Line,
    string Key,
    string Parcel,
    Practice Practice,
    double Quantity,
    QuantityUnit Unit,
    int CrewSize,
    LocalDate? Deadline,
    LocalDate? ScheduledOn,
    ImmutableArray<string> Prerequisites,
    string? CrewLead);
