using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Landowners;

/// <summary>A landowner's land, in plain words.</summary>
/// <param name="Owner">Their name.</param>
/// <param name="Consultant">The organization that plans for them.</param>
/// <param name="Today">The day it is.</param>
/// <param name="Properties">Their properties, by name.</param>
/// <param name="Wear">What to wear for the work that is planned.</param>
/// <param name="Stop">When to stop.</param>
/// <param name="CalendarAddress">What a calendar program subscribes to; null where there is none.</param>
public sealed record LandView(
    string Owner, string Consultant, LocalDate Today, IReadOnlyList<LandProperty> Properties, IReadOnlyList<string> Wear,
    IReadOnlyList<string> Stop, string? CalendarAddress)
{
    /// <summary>The units that they have chosen.</summary>
    public required PersonUnits Units { get; init; }

    /// <summary>The first thing that they want to know.</summary>
    public string Summary
    {
        get
        {
            var work = Properties.SelectMany(property => property.Work).ToList();
            if (work.Count == 0)
                return "No work is planned on your land";
            var may = work.Count(one => !one.Waits && one.Days[0].MayWork);
            if (may > 0)
                return may == work.Count && may == 1 ? "Your work may be done today" : $"{may} of {DayWords.Count(work.Count, "job", "jobs")} may be done today";
            var next = work.Where(one => !one.Waits).SelectMany(one => one.Days).Where(run => run.MayWork)
                .Select(run => (LocalDate?)run.First).Min();
            return next is { } day ? $"Nothing today. Next good day: {DayWords.Of(day)}" : "Nothing may be done this week, as known now";
        }
    }
}

/// <summary>One of their properties.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Work">What is to be done, by parcel.</param>
/// <param name="Done">What was done, the newest first.</param>
/// <param name="Next">What comes in later time, the soonest first.</param>
public sealed record LandProperty(string Name, IReadOnlyList<LandWork> Work, IReadOnlyList<string> Done, IReadOnlyList<string> Next);

/// <summary>Work that is to be done, and this week.</summary>
/// <param name="Title">The work and where.</param>
/// <param name="Waits">Whether other work or its own dates come first.</param>
/// <param name="Note">What else is to be said, such as the day that a crew is booked for; null for nothing.</param>
/// <param name="Days">This week, equal days together.</param>
public sealed record LandWork(string Title, bool Waits, string? Note, IReadOnlyList<LandDays> Days);

/// <summary>Days of the same state for the same reason.</summary>
public sealed record LandDays(LocalDate First, LocalDate Last, DayState State, string Why)
{
    public bool MayWork => State is DayState.Open or DayState.Limited;

    /// <summary>As in Today, Sat 28 Nov, or Sat 28 Nov to Mon 30 Nov.</summary>
    public string When(LocalDate today)
    {
        var first = First == today ? "Today" : DayWords.Of(First);
        return First == Last ? first : $"{first} to {DayWords.Of(Last)}";
    }

    /// <summary>What it means, without the reason.</summary>
    public string Says => State switch
    {
        DayState.Open => "good to work",
        DayState.Limited => "only with care",
        DayState.Closed => "do not work",
        _ => "not known: do not start",
    };
}
