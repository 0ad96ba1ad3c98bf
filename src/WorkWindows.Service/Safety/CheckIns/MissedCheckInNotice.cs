using NodaTime;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Notices.Templates;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>A crew is not heard from: who, where, since when, and what to do.</summary>
internal static class MissedCheckInNotice
{
    /// <param name="scene">Where it is.</param>
    /// <param name="watch">The watch with its contacts and check-ins.</param>
    /// <param name="missed">What was missed.</param>
    /// <param name="call">The number of this call, from 0.</param>
    /// <param name="nextCallAt">When the next contact is written to, unless somebody takes it over.</param>
    /// <param name="link">Where the reader can take it over; null when that is not known.</param>
    public static Notice Of(
        WatchScene scene, CrewWatch watch, MissedCheckIn missed, int call, Instant nextCallAt, string? link)
    {
        var contacts = watch.Contacts.OrderBy(contact => contact.Place).ToList();
        return NoticeTemplates.Fill(NoticeKinds.MissedCheckIn, new
        {
            scene.Title,
            People = People(watch.PeopleOnSite),
            Due = MailDays.Of(missed.DueAt, scene.Zone),
            watch.GraceMinutes,
            Heard = MailDays.Of(watch.LastHeard.At, scene.Zone),
            HeardBy = watch.LastHeard.By,
            scene.Phones,
            Link = link ?? "",
            scene.Position,
            scene.WayThere,
            Contacts = contacts.Select(contact => $"{contact.Place + 1}. {contact.Name}").ToArray(),
            Call = call + 1,
            Next = contacts[(call + 1) % contacts.Count].Name,
            NextAt = MailDays.Of(nextCallAt, scene.Zone),
            watch.StartedBy,
            scene.Sender,
        });
    }

    internal static string People(int count) => count == 1 ? "The one person" : $"The {count} people";
}

/// <summary>Takes a call back: the crew has been heard from.</summary>
internal static class CrewFineNotice
{
    /// <param name="scene">Where it is.</param>
    /// <param name="watch">The watch.</param>
    /// <param name="dueAt">The check-in that was missed, the first of several.</param>
    /// <param name="heard">What ended it.</param>
    public static Notice Of(WatchScene scene, CrewWatch watch, Instant dueAt, CheckIn heard) =>
        NoticeTemplates.Fill(NoticeKinds.CrewFine, new
        {
            scene.Title,
            People = MissedCheckInNotice.People(watch.PeopleOnSite),
            Due = MailDays.Of(dueAt, scene.Zone),
            HeardBy = heard.By,
            Heard = MailDays.Of(heard.At, scene.Zone),
            Said = heard.Kind == CheckInKind.Out ? "we are out" : "I am fine",
            scene.Sender,
        });
}

/// <summary>Tells the others who were called who sees to it.</summary>
internal static class TakenOverNotice
{
    public static Notice Of(WatchScene scene, CrewWatch watch, MissedCheckIn missed) =>
        NoticeTemplates.Fill(NoticeKinds.TakenOver, new
        {
            scene.Title,
            People = MissedCheckInNotice.People(watch.PeopleOnSite),
            Due = MailDays.Of(missed.DueAt, scene.Zone),
            By = missed.AcknowledgedBy,
            At = MailDays.Of(missed.AcknowledgedAt!.Value, scene.Zone),
            scene.Sender,
        });
}
