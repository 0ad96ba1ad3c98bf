using NodaTime;
using WorkWindows.Engine.Chances;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Crews;

/// <summary>A crew's work on a task on one day.</summary>
/// <param name="Id">The booking.</param>
/// <param name="Task">The task.</param>
/// <param name="Day">The day.</param>
/// <param name="Hours">Hours of the crew at the work.</param>
/// <param name="IsFixed">Somebody put it there by hand.</param>
/// <param name="State">What may be done on the day, as known now.</param>
/// <param name="Chance">What past years say of the day; null where they are too few.</param>
/// <param name="People">Who goes.</param>
/// <param name="Equipment">What they take.</param>
/// <param name="Missing">Who or what of them is off on the day.</param>
/// <param name="TooEarly">The work that comes first, is not done and is not booked before; null for none.</param>
public sealed record BookingCard(
    Guid Id, TaskSummary Task, LocalDate Day, decimal Hours, bool IsFixed, DayState State, DayChance? Chance,
    IReadOnlyList<string> People, IReadOnlyList<string> Equipment, IReadOnlyList<string> Missing,
    string? TooEarly)
{
    /// <summary>How likely the day is to be workable, where it is not known yet; null where it is.</summary>
    public string? ChanceWords => (State, Chance?.Share) switch
    {
        (not DayState.Unknown, _) or (_, null) => null,
        (_, 0) => "closed in every past year",
        (_, 1) => "workable in every past year",
        (_, { } share) => $"about {Chances.ChanceWords.Percent(share)} % likely",
    };

    /// <summary>What stands against the day, in a few words; null when nothing does.</summary>
    public string? Trouble => State switch
    {
        DayState.Closed => "The day is closed now.",
        _ when TooEarly is not null => $"{TooEarly} comes first: it is neither done nor booked before.",
        _ when Missing.Count > 0 => $"Off on this day: {string.Join(", ", Missing)}.",
        DayState.Unknown when Chance?.Share is null => "Not known whether it is workable.",
        _ => null,
    };
}

/// <summary>A crew on a day.</summary>
/// <param name="Day">The day.</param>
/// <param name="Off">Why it does not work, or null.</param>
/// <param name="Cards">Its work, in order.</param>
public sealed record BoardCell(LocalDate Day, string? Off, IReadOnlyList<BookingCard> Cards);

/// <summary>A crew's days.</summary>
public sealed record BoardRow(Guid CrewId, string Crew, IReadOnlyList<BoardCell> Cells);

/// <summary>A task that no crew has.</summary>
/// <param name="Task">The task.</param>
/// <param name="Workable">Days of the week shown that are workable, as known now.</param>
public sealed record WaitingTask(TaskSummary Task, IReadOnlyList<LocalDate> Workable);

/// <summary>Crews and their days.</summary>
/// <param name="Today">The day it is.</param>
/// <param name="Days">The days, in order.</param>
/// <param name="Rows">The crews, by name.</param>
/// <param name="Waiting">Tasks that no crew has from the first day on.</param>
public sealed record Board(
    LocalDate Today, IReadOnlyList<LocalDate> Days, IReadOnlyList<BoardRow> Rows, IReadOnlyList<WaitingTask> Waiting)
{
    public LocalDate First => Days[0];


    /// <summary>What to look at first, in a sentence.</summary>
    public string Summary
    {
        get
        {
            var days = Rows.SelectMany(row => row.Cells).Where(cell => cell.Cards.Count > 0).ToList();
            if (days.Count == 0)
                return "No crew has work these days";
            var troubled = days.Count(cell => cell.Cards.Any(card => card.Trouble is not null));
            var booked = DayWords.Count(days.Count, "crew day is booked", "crew days are booked");
            return troubled == 0 ? booked : $"{booked}, {troubled} of them with work that cannot be done as known now";
        }
    }
}
