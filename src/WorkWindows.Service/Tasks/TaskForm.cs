using NodaTime;
using WorkWindows.Engine.Practices;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Tasks;

/// <summary>A planned task as someone wants it to be.</summary>
/// <param name="Key">The organization's own name for it; it stays what it is once the task exists.</param>
/// <param name="ParcelId">Where.</param>
/// <param name="Practice">A key of the practice catalogue.</param>
/// <param name="Quantity">How much, in <paramref name="QuantityUnit"/>, or null where it is not known.</param>
/// <param name="QuantityUnit">acres, stems, feet, trees or hours; exactly where there is a quantity.</param>
/// <param name="CrewSize">How many people.</param>
/// <param name="CrewLeadId">A crew lead or consultant of the organization, or null.</param>
/// <param name="Deadline">The last day on which it may be done, or null.</param>
/// <param name="ScheduledOn">The day it is meant to be done on, or null.</param>
/// <param name="PrerequisiteIds">The tasks that come first; null for none.</param>
/// <param name="NotBefore">The first day on which it may be done, or null.</param>
/// <param name="FollowsId">The work on the same parcel whose completion sets its first day and its deadline, or null.</param>
/// <param name="HoursLow">The consultant's own estimate, hours of one person, the least; null for the usual rates.</param>
/// <param name="HoursHigh">The most; exactly where there is a least.</param>
/// <param name="Points">What it is worth, points of the consultant's own; null for its practice's weight.</param>
public sealed record TaskForm(
    string? Key, Guid? ParcelId, string? Practice, decimal? Quantity, string? QuantityUnit, int? CrewSize,
    Guid? CrewLeadId, LocalDate? Deadline, LocalDate? ScheduledOn, IReadOnlyList<Guid>? PrerequisiteIds,
    LocalDate? NotBefore = null, Guid? FollowsId = null, decimal? HoursLow = null, decimal? HoursHigh = null,
    decimal? Points = null)
{
    private const decimal MostHours = 10_000;
    private const decimal MostPoints = 1_000_000;
    private const decimal HighestQuantity = 1_000_000;
    private const int LargestCrew = 99;

    private static readonly string Practices =
        $"one of: {string.Join(", ", PracticeCatalogue.All.Select(practice => practice.Id))}";

    private static readonly string[] Units =
        [.. Enum.GetValues<QuantityUnit>().Select(unit => unit.ToString().ToLowerInvariant())];

    internal TaskFields Check(FieldFaults faults)
    {
        var practice = faults.Required("practice", Practice, id => PracticeCatalogue.Find(id) is not null, Practices);
        if (Quantity is not (null or (> 0 and <= HighestQuantity)))
            faults.Add("quantity", Quantity, $"a number above 0 and up to {HighestQuantity}, or nothing");
        var unit = faults.Optional("quantityUnit", QuantityUnit, Units.Contains, $"one of: {string.Join(", ", Units)}");
        if (Quantity is not null && QuantityUnit is null)
            faults.Add("quantityUnit", null, $"one of: {string.Join(", ", Units)}, because there is a quantity");
        else if (Quantity is null && unit is not null)
            faults.Add("quantity", null, $"a number of {unit}, or no quantityUnit");
        if (CrewSize is not (>= 1 and <= LargestCrew))
            faults.Add("crewSize", CrewSize, $"a whole number of people from 1 to {LargestCrew}");
        CheckPlanning(faults);
        return new(practice, unit, CrewSize ?? 0, (PrerequisiteIds ?? []).Distinct().ToList());
    }

    private void CheckPlanning(FieldFaults faults)
    {
        if (NotBefore > Deadline)
            faults.Add("notBefore", NotBefore, $"a day up to the deadline, {Deadline:R}, or nothing");
        if (HoursLow is not (null or (> 0 and <= MostHours)))
            faults.Add("hoursLow", HoursLow, $"hours of one person above 0 and up to {MostHours}, or nothing");
        if (HoursHigh > MostHours || HoursHigh < HoursLow || HoursLow is null != HoursHigh is null)
            faults.Add("hoursHigh", HoursHigh, $"hours of one person from hoursLow to {MostHours}, exactly where there is a hoursLow");
        if (Points is not (null or (>= 0 and <= MostPoints)))
            faults.Add("points", Points, $"points from 0 to {MostPoints}, or nothing for the weight of the practice");
    }
}

/// <summary>The fields of a form that was found right.</summary>
internal sealed record TaskFields(
    string Practice, string? QuantityUnit, int CrewSize, IReadOnlyList<Guid> PrerequisiteIds);
