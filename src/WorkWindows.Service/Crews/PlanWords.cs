using System.Globalization;
using NodaTime;
using WorkWindows.Planning.Checks;
using WorkWindows.Planning.Crews;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Crews;

/// <summary>Plans in words, and bookings as the planner has them.</summary>
internal static class PlanWords
{
    /// <summary>A stored booking as the planner has it.</summary>
    public static Planning.Cases.Booking Of(Booking booking) => new(
        $"{booking.TaskId}", $"{booking.CrewId}", booking.Day, (double)booking.Hours, booking.Place)
    {
        Members = [.. booking.People.Select(person => $"{person.PersonId}").Order(StringComparer.Ordinal)],
        EquipmentIds = [.. booking.Equipment.Select(piece => $"{piece.EquipmentId}").Order(StringComparer.Ordinal)],
    };

    /// <summary>A broken rule in a sentence.</summary>
    /// <param name="broken">The rule.</param>
    /// <param name="input">The case.</param>
    /// <param name="names">Names of people and equipment, by id.</param>
    public static string Of(BrokenRule broken, PlanInput input, IReadOnlyDictionary<Guid, string> names)
    {
        var day = DayWords.Of(broken.Day);
        var crew = Crew(broken.CrewId);
        var work = broken.TaskId is { } task ? Title(task, input) : "The day";
        return broken.Rule switch
        {
            HardRule.ClosedDay => $"{work} cannot be worked on {day}: the day is closed or not known.",
            HardRule.BeforeFirstDay => $"{work} may not be done before {Date(input, broken, task => task.NotBefore)}.",
            HardRule.AfterDeadline => $"{work} must be done by {Date(input, broken, task => task.Deadline)}.",
            HardRule.DayOff => $"{(broken.Other is { } who ? Name(who) : crew)} is off on {day}.",
            HardRule.NotOfTheCrew => $"{Name(broken.Other!)} is not of {crew}.",
            HardRule.TooFewPeople => $"{crew} has too few people on {day} for {Lower(work)}: {People(broken, input)} must be there.",
            HardRule.NoCertificate => $"Nobody of {crew} holds '{broken.Other}' on {day}, which {Lower(work)} asks for.",
            HardRule.NoEquipment => $"{crew} has no {broken.Other} on {day}, which {Lower(work)} asks for.",
            HardRule.PersonTwice => $"{Name(broken.Other!)} is with two crews on {day}.",
            HardRule.EquipmentTwice => $"{Name(broken.Other!)} is with two crews on {day}.",
            HardRule.TooClose => $"{crew} would be within the spacing distance of {Crew(broken.Other!)} on {day}.",
            HardRule.OutOfOrder => $"{work} comes after {Lower(Title(broken.Other!, input))}, which must be booked whole on earlier days.",
            HardRule.DayTooLong => $"{crew}'s {day} is longer than its hours, drives included.",
            HardRule.TooManyHours => $"{work} is booked for more hours than it takes.",
        };

        string Crew(string id) => input.Crews.GetValueOrDefault(Guid.Parse(id))?.Name ?? "a crew";
        string Name(string id) => names.GetValueOrDefault(Guid.Parse(id), "somebody");
    }

    /// <summary>Why a plan leaves a task out, with the name of the work that it waits for.</summary>
    public static string LeftOut(LeftOut left, PlanInput input)
    {
        var first = input.Case.Tasks.First(task => task.Id == left.TaskId).After
            .FirstOrDefault(id => left.Says.Contains(id, StringComparison.Ordinal));
        return first is null ? left.Says : left.Says.Replace(first, Lower(Title(first, input)), StringComparison.Ordinal);
    }

    /// <summary>The work and its place in a line.</summary>
    public static string Title(string task, PlanInput input) =>
        input.Tasks.GetValueOrDefault(Guid.Parse(task))?.Task is { } known
            ? $"{known.Practice.Name}, {known.PropertyName}, {known.ParcelName}"
            : "Work that is done";

    private static string Lower(string work) => char.ToLowerInvariant(work[0]) + work[1..];

    private static string People(BrokenRule broken, PlanInput input) =>
        input.Case.Tasks.First(task => task.Id == broken.TaskId).CrewSize.ToString(CultureInfo.InvariantCulture);

    private static string Date(PlanInput input, BrokenRule broken, Func<Planning.Cases.PlanTask, LocalDate?> which) =>
        which(input.Case.Tasks.First(task => task.Id == broken.TaskId)) is { } day ? DayWords.WithYear(day) : "its time";
}
