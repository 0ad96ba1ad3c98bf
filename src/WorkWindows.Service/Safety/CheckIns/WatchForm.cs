using System.Collections.Immutable;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>A watch as someone wants it. Times are in minutes.</summary>
/// <param name="PeopleOnSite">How many people work there.</param>
/// <param name="IntervalMinutes">From one check-in to the next; null for the usual.</param>
/// <param name="GraceMinutes">From the due time to the first call; null for the usual.</param>
/// <param name="EscalationMinutes">From one call to the next; null for the usual.</param>
/// <param name="Contacts">Who is written to, in order.</param>
/// <param name="OnSite">The crew is on the site already: it is watched whether the task is released or not.</param>
public sealed record WatchForm(
    int? PeopleOnSite, int? IntervalMinutes, int? GraceMinutes, int? EscalationMinutes,
    IReadOnlyList<ContactForm>? Contacts, bool? OnSite = null)
{
    // All of these are common practice, no source.
    public const int UsualInterval = 60, UsualGrace = 15, UsualEscalation = 10;
    public const int ShortestInterval = 5, LongestInterval = 240;
    public const int LongestGrace = 60, LongestEscalation = 60;
    public const int MostContacts = 10;
    private const int LargestCrew = 99;

    internal WatchFields Check(FieldFaults faults)
    {
        if (PeopleOnSite is not (>= 1 and <= LargestCrew))
            faults.Add("peopleOnSite", PeopleOnSite, $"a whole number of people from 1 to {LargestCrew}");
        // One that is null has neither of what a contact needs, and is told so.
        var contacts = (Contacts ?? []).Select(contact => contact ?? new(null, null, null)).ToList();
        if (contacts.Count is 0 or > MostContacts)
        {
            faults.Add("contacts", contacts.Count == 0 ? null : contacts.Count,
                $"1 to {MostContacts} people to write to, in order");
        }
        return new(
            PeopleOnSite ?? 0,
            Minutes("intervalMinutes", IntervalMinutes, UsualInterval, ShortestInterval, LongestInterval),
            Minutes("graceMinutes", GraceMinutes, UsualGrace, 0, LongestGrace),
            Minutes("escalationMinutes", EscalationMinutes, UsualEscalation, 1, LongestEscalation),
            [.. contacts.Select((contact, place) => contact.Check(place, faults))]);

        int Minutes(string field, int? given, int usual, int least, int most)
        {
            if (given < least || given > most)
                faults.Add(field, given, $"whole minutes from {least} to {most}");
            return given ?? usual;
        }
    }
}

/// <summary>Somebody to write to: a person of the organization, or a name and a mail address.</summary>
public sealed record ContactForm(Guid? PersonId, string? Name, string? Email)
{
    internal ContactForm Check(int place, FieldFaults faults)
    {
        var field = $"contacts[{place}]";
        if (PersonId is null)
        {
            return new(
                null,
                faults.Required(
                    $"{field}.name", Name, text => text.Length > 0 && FieldText.IsName(text), FieldText.Name),
                faults.Required($"{field}.email", Email, FieldText.IsMail, FieldText.Mail));
        }
        if (Name is not null || Email is not null)
            faults.Add(field, Name ?? Email, "either a personId, or a name and an email");
        return this;
    }
}

/// <summary>The fields of a form that was found right.</summary>
internal sealed record WatchFields(
    int PeopleOnSite, int IntervalMinutes, int GraceMinutes, int EscalationMinutes,
    ImmutableArray<ContactForm> Contacts);
