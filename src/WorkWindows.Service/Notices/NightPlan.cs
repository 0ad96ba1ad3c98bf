using System.Collections.Immutable;
using NodaTime;

namespace WorkWindows.Service.Notices;

/// <summary>What one night has to say, and what is to be remembered of it.</summary>
public sealed class NightPlan
{
    public List<NoticeDraft> Messages { get; } = [];

    public List<Announcement> Announced { get; } = [];

    /// <summary>Announced windows that have grown, with their new last day.</summary>
    public List<(Announcement Window, LocalDate LastDay)> Extended { get; } = [];

    public List<Announcement> Stopped { get; } = [];

    /// <summary>People who should have been told something and have no mail address.</summary>
    public SortedSet<Guid> Unreachable { get; } = [];

    /// <summary>The pure function behind the nightly run: the same night always gives the same plan.</summary>
    public static NightPlan Of(Night night)
    {
        var plan = new NightPlan();
        StopWork.Plan(night, plan);
        GoodToCut.Plan(night, plan);
        Reminders.Plan(night, plan);
        return plan;
    }

    /// <summary>The announced windows that still stand after what has been planned so far.</summary>
    public IReadOnlyList<Announcement> Standing(Night night) => [.. night.Announced.Except(Stopped), .. Announced];

    /// <returns>Whether the person is told; a message with this key is written once.</returns>
    public bool Tell(Night night, Guid person, string key, Func<Recipient, NoticeDraft> draft)
    {
        if (night.Written.Contains(key))
            return false;
        if (night.People.GetValueOrDefault(person) is not { Address: not null } recipient)
        {
            Unreachable.Add(person);
            return false;
        }
        Messages.Add(draft(recipient));
        return true;
    }
}

/// <summary>A message before it has a row.</summary>
/// <param name="Key">What it is about.</param>
/// <param name="Kind">One of <see cref="NoticeKinds"/>.</param>
/// <param name="To">Whom it is for; the address is known.</param>
/// <param name="Notice">What it says.</param>
/// <param name="Calendar">The days to put into a calendar or to take out of it, or null.</param>
public sealed record NoticeDraft(string Key, string Kind, Recipient To, Notice Notice, CalendarDraft? Calendar);

/// <summary>Entries for a calendar.</summary>
/// <param name="IsCancelled">They are to be taken out.</param>
/// <param name="Entries">One a run of days.</param>
public sealed record CalendarDraft(bool IsCancelled, ImmutableArray<CalendarEntry> Entries);

/// <summary>Whole days of one task, both ends included.</summary>
public sealed record CalendarEntry(Guid TaskId, LocalDate First, LocalDate Last, string Title, string Place);
