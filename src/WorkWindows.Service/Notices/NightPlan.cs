using NodaTime;
using WorkWindows.Service.Notices.Calendars;
using WorkWindows.Service.Notices.Certificates;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Notices.FollowUps;
using WorkWindows.Service.Notices.Seasons;

namespace WorkWindows.Service.Notices;

/// <summary>What one night has to say, and what is to be remembered of it.</summary>
public sealed class NightPlan
{
    public List<NoticeDraft> Messages { get; } = [];

    public List<Announcement> Announced { get; } = [];

    /// <summary>Announced windows that have grown, with their new last day.</summary>
    public List<(Announcement Window, LocalDate LastDay)> Extended { get; } = [];

    public List<Announcement> Stopped { get; } = [];

    /// <summary>Who is told to stop which task.</summary>
    public HashSet<(Guid Task, Guid Person)> ToldToStop { get; } = [];

    /// <summary>The keys of messages that wait to be sent and are not true any more.</summary>
    public SortedSet<string> Dropped { get; } = new(StringComparer.Ordinal);

    /// <summary>Until when people have been told now that seasons last.</summary>
    public Dictionary<(Guid Task, Guid Person), LocalDate> SeasonEnds { get; } = [];

    /// <summary>What people are told now and never again.</summary>
    public HashSet<(Guid Person, string Topic)> Topics { get; } = [];

    /// <summary>People who should have been told something and have no mail address.</summary>
    public SortedSet<Guid> Unreachable { get; } = [];

    /// <summary>The pure function behind the nightly run: the same night always gives the same plan.</summary>
    public static NightPlan Of(Night night)
    {
        var plan = new NightPlan();
        StopWork.Plan(night, plan);
        TakenOff.Plan(night, plan);
        AtWork.Plan(night, plan);
        GoodToCut.Plan(night, plan);
        Reminders.Plan(night, plan);
        OpeningSoon.Plan(night, plan);
        ClosingEarly.Plan(night, plan);
        FollowUpsDue.Plan(night, plan);
        CertificatesExpiring.Plan(night, plan);
        return plan;
    }

    /// <summary>The announced windows that still stand after what has been planned so far.</summary>
    public IReadOnlyList<Announcement> Standing(Night night) => [.. night.Announced.Except(Stopped), .. Announced];

    /// <summary>
    /// Writes a message in each way that the person wants to be told; one with this key is written once.
    /// </summary>
    /// <returns>How the person is told.</returns>
    public Telling Tell(Night night, Guid person, string kind, string key, Func<Recipient, NoticeDraft> draft)
    {
        if (night.Written.Contains(key) && !Dropped.Contains(key))
            return Telling.None;
        if (night.People.GetValueOrDefault(person) is not { } recipient)
            return Telling.None;
        var ways = recipient.Wishes.Ways(NoticeKinds.Find(kind)!);
        if (recipient.Address is null && ways.HasFlag(NoticeChannels.Mail))
        {
            ways &= ~NoticeChannels.Mail;
            if (!ways.HasFlag(NoticeChannels.Webhook))
            {
                Unreachable.Add(person);
                if (!NoticeKinds.MayBeTurnedOff(kind))
                    NoAddress.Tell(night, this, draft(recipient));
            }
        }
        var sent = ways & (NoticeChannels.Mail | NoticeChannels.Webhook);
        if (sent != NoticeChannels.None)
        {
            var written = draft(recipient);
            written = written with { Notice = written.Notice.In(recipient.Wishes.Scale) };
            if (sent.HasFlag(NoticeChannels.Mail))
                Messages.Add(written);
            if (sent.HasFlag(NoticeChannels.Webhook))
                Messages.Add(written with { Channel = NoticeChannels.Webhook });
        }
        // Somebody who cannot be reached does not look at a feed nobody has asked for.
        return new(ways == NoticeChannels.None || Unreachable.Contains(person) ? NoticeChannels.None : ways, key);
    }

    /// <returns>Whether the person has not been told this before.</returns>
    public bool IsNew(Night night, Guid person, string topic) =>
        !night.Topics.Contains((person, topic)) && !Topics.Contains((person, topic));
}

/// <summary>How a person is told of something.</summary>
/// <param name="Ways">The ways; none when the person is not told.</param>
/// <param name="Key">The key of the message.</param>
public readonly record struct Telling(NoticeChannels Ways, string? Key)
{
    public static Telling None => default;

    public bool IsTold => Ways != NoticeChannels.None;

    /// <summary>The message that an announcement rests on; null where the calendar has told it at once.</summary>
    public string? MessageKey => Ways.HasFlag(NoticeChannels.Calendar) && !HasMessage ? null : Key;

    private bool HasMessage => (Ways & (NoticeChannels.Mail | NoticeChannels.Webhook)) != NoticeChannels.None;
}

/// <summary>A message before it has a row.</summary>
/// <param name="Key">What it is about.</param>
/// <param name="Kind">One of <see cref="NoticeKinds"/>.</param>
/// <param name="To">Whom it is for.</param>
/// <param name="Notice">What it says.</param>
/// <param name="Calendar">The days to put into a calendar or to take out of it, or null.</param>
public sealed record NoticeDraft(string Key, string Kind, Recipient To, Notice Notice, CalendarDraft? Calendar)
{
    public NoticeChannels Channel { get; init; } = NoticeChannels.Mail;
}
