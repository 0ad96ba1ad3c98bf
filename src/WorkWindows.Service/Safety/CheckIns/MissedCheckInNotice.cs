using System.Globalization;
using NodaTime;
using WorkWindows.Service.Notices;

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
        var heard = watch.LastHeard;
        return new(
            $"No check-in from the crew: {scene.Title}",
            [
                new Paragraph($"{People(watch.PeopleOnSite)} at {scene.Title} had to check in by "
                    + $"{DayWords.Of(missed.DueAt, scene.Zone)}, and did not, nor in the {watch.GraceMinutes} minutes "
                    + "after. "
                    + $"They were last heard from {DayWords.Of(heard.At, scene.Zone)}, by {heard.By}."),
                new Heading("Do this now"),
                new ItemList([.. ToDo(scene)]),
                link is null
                    ? new Paragraph("Say that you have taken it over, so that nobody else is called: sign in to "
                        + "WorkWindows, open the task and its check-ins, and press 'I take it over'.")
                    : new Link("Say here that you have taken it over, so that nobody else is called:", link),
                new Heading("Where"),
                new Paragraph($"{scene.Title}. {Degrees(scene.LatitudeDeg)}, {Degrees(scene.LongitudeDeg)} (latitude and "
                    + "longitude in degrees, east positive)."),
                new Heading("Who is written to"),
                new ItemList([.. contacts.Select(contact => new Item($"{contact.Place + 1}. {contact.Name}"))]),
                new Paragraph($"This is call {call + 1}. {contacts[(call + 1) % contacts.Count].Name} is next, "
                    + $"{DayWords.Of(nextCallAt, scene.Zone)} at the latest, and so on round and round until somebody takes it "
                    + "over or the crew checks in."),
                NoticeBlocks.From(
                    scene.Sender, $"You get this because {watch.StartedBy} named you as a contact of the crew."),
            ]);
    }

    internal static string People(int count) => count == 1 ? "The one person" : $"The {count} people";

    private static IEnumerable<Item> ToDo(WatchScene scene)
    {
        foreach (var phone in scene.Phones)
            yield return new($"Call {phone}.");
        if (scene.Phones.Count == 0)
            yield return new("Call the crew. No phone number of it is stored.");
        yield return new("Nobody answers: call 911, or the emergency number of the place, and name the place below.");
        yield return new("Send somebody who is near, and not alone.");
    }

    private static string Degrees(double degrees) => degrees.ToString("0.00000", CultureInfo.InvariantCulture);
}

/// <summary>Takes a call back: the crew has been heard from.</summary>
internal static class CrewFineNotice
{
    /// <param name="scene">Where it is.</param>
    /// <param name="watch">The watch.</param>
    /// <param name="dueAt">The check-in that was missed, the first of several.</param>
    /// <param name="heard">What ended it.</param>
    public static Notice Of(WatchScene scene, CrewWatch watch, Instant dueAt, CheckIn heard) => new(
        $"The crew is fine: {scene.Title}",
        [
            new Paragraph($"{MissedCheckInNotice.People(watch.PeopleOnSite)} at {scene.Title} who had to check in by "
                + $"{DayWords.Of(dueAt, scene.Zone)} have been heard from. {heard.By} said "
                + $"{DayWords.Of(heard.At, scene.Zone)}: {(heard.Kind == CheckInKind.Out ? "we are out" : "I am fine")}."),
            new Paragraph("If you have sent anybody out or called for help, call it off."),
            NoticeBlocks.From(scene.Sender, "You get this because you were told that they were not heard from."),
        ]);
}
