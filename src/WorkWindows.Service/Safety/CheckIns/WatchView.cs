using NodaTime;
using WorkWindows.Service.Notices;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>A watch as the API shows it.</summary>
/// <param name="Id">The watch.</param>
/// <param name="TaskId">The task that the crew is at.</param>
/// <param name="Day">The day in the property's zone.</param>
/// <param name="PeopleOnSite">How many people.</param>
/// <param name="IntervalMinutes">From one check-in to the next.</param>
/// <param name="GraceMinutes">From the due time to the first call.</param>
/// <param name="EscalationMinutes">From one call to the next.</param>
/// <param name="StartedAt">When it began.</param>
/// <param name="StartedBy">Who began it.</param>
/// <param name="DueAt">When the crew is to be heard from.</param>
/// <param name="CalledAt">When the first contact is written to, unless it is.</param>
/// <param name="EndedAt">When the crew was out, or null.</param>
/// <param name="BegunUnreleased">Why the task was not released when it began; null where it was.</param>
/// <param name="MailLeaves">Whether there is a mail server: without one nobody is reached.</param>
/// <param name="Contacts">Who is written to, in order.</param>
/// <param name="CheckIns">The signs of life, the oldest first.</param>
/// <param name="Missed">The missed check-ins, the oldest first.</param>
public sealed record WatchView(
    Guid Id, Guid TaskId, LocalDate Day, int PeopleOnSite, int IntervalMinutes, int GraceMinutes, int EscalationMinutes,
    Instant StartedAt, string StartedBy, Instant DueAt, Instant CalledAt, Instant? EndedAt, string? BegunUnreleased,
    bool MailLeaves,
    IReadOnlyList<ContactView> Contacts, IReadOnlyList<CheckInView> CheckIns, IReadOnlyList<MissedView> Missed)
{
    /// <param name="watch">With all that belongs to it.</param>
    /// <param name="mails">What has become of the calls' mails, by key.</param>
    /// <param name="mail">How mail leaves.</param>
    public static WatchView Of(CrewWatch watch, IReadOnlyDictionary<string, CallMail> mails, MailOptions mail)
    {
        var contacts = watch.Contacts.OrderBy(contact => contact.Place).ToList();
        return new(
            watch.Id, watch.TaskId, watch.Day, watch.PeopleOnSite, watch.IntervalMinutes, watch.GraceMinutes,
            watch.EscalationMinutes, watch.StartedAt, watch.StartedBy, watch.DueAt, watch.CalledAt, watch.EndedAt,
            watch.BegunUnreleased, mail.HasServer,
            [.. contacts.Select(contact => new ContactView(contact.PersonId, contact.Name, contact.Address))],
            [.. watch.CheckIns.OrderBy(one => one.Number).Select(one => new CheckInView(one.At, one.By, one.Kind))],
            [.. watch.Missed.OrderBy(one => one.RaisedAt).Select(one => new MissedView(
                one.DueAt, one.RaisedAt, one.AcknowledgedAt, one.AcknowledgedBy, one.ClearedAt,
                [.. one.Calls.OrderBy(call => call.Number).Select(call => new CallView(
                    call.Number, contacts[call.Place].Name, call.WrittenAt,
                    mails.GetValueOrDefault(call.MessageKey)?.SentAt,
                    mails.GetValueOrDefault(call.MessageKey) is { IsLost: true }))]))]);
    }
}

public sealed record ContactView(Guid? PersonId, string Name, string Email);

public sealed record CheckInView(Instant At, string By, CheckInKind Kind);

/// <param name="DueAt">The due time that passed.</param>
/// <param name="RaisedAt">When that was noticed.</param>
/// <param name="AcknowledgedAt">When somebody took it over, or null.</param>
/// <param name="AcknowledgedBy">Who.</param>
/// <param name="ClearedAt">When the crew was heard from again, or null.</param>
/// <param name="Calls">Who was written to.</param>
public sealed record MissedView(
    Instant DueAt, Instant RaisedAt, Instant? AcknowledgedAt, string? AcknowledgedBy, Instant? ClearedAt,
    IReadOnlyList<CallView> Calls)
{
    public bool IsEscalating => AcknowledgedAt is null && ClearedAt is null;
}

/// <param name="Number">From 0; after the last contact the first one comes again.</param>
/// <param name="Contact">Who was written to.</param>
/// <param name="WrittenAt">When.</param>
/// <param name="SentAt">When the mail server took it; null while it has not.</param>
/// <param name="IsLost">Whether the mail came back or was given up: the contact does not have it.</param>
public sealed record CallView(int Number, string Contact, Instant WrittenAt, Instant? SentAt, bool IsLost);

/// <summary>What has become of the mail of a call.</summary>
public sealed record CallMail(string Key, Instant? SentAt, bool IsLost);
