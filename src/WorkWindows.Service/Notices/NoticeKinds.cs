using System.Collections.Frozen;
using System.Collections.Immutable;
using WorkWindows.Service.Accounts;

namespace WorkWindows.Service.Notices;

/// <summary>A kind of notice, and what may be chosen of it.</summary>
/// <param name="Key">Its key in rows, files and JSON.</param>
/// <param name="Title">Its name for people.</param>
/// <param name="Roles">Who gets it.</param>
/// <param name="MayBeTurnedOff">
/// Whether a person may do without. What takes back what was said, and calls for a crew, always goes out.
/// </param>
/// <param name="WaitsForMorning">Whether it waits while its reader has quiet hours.</param>
/// <param name="HasDays">Whether it has days for a calendar.</param>
public sealed record NoticeKind(
    string Key, string Title, ImmutableArray<Role> Roles, bool MayBeTurnedOff, bool WaitsForMorning,
    bool HasDays = false);

public static class NoticeKinds
{
    public const string GoodToCut = "good-to-cut";
    public const string Reminder = "reminder";
    public const string OpeningSoon = "opening-soon";
    public const string ClosingEarly = "closing-early";
    public const string FollowUp = "follow-up";
    public const string Certificate = "certificate";
    public const string DoNotStart = "do-not-start";
    public const string StopWork = "stop-work";
    public const string Outage = "outage";
    public const string MissedCheckIn = "check-in-missed";
    public const string TakenOver = "taken-over";
    public const string CrewFine = "crew-fine";
    public const string Unreachable = "unreachable";

    private static readonly ImmutableArray<Role> Consultants = [Role.Consultant];
    private static readonly ImmutableArray<Role> Crews = [Role.Consultant, Role.CrewLead, Role.CrewMember];
    private static readonly ImmutableArray<Role> Everybody = [.. Crews, Role.Landowner];

    /// <summary>Every kind, in the order in which a page of choices shows them.</summary>
    public static ImmutableArray<NoticeKind> All { get; } =
    [
        new(GoodToCut, "Good to cut this week", [Role.Landowner], true, true, HasDays: true),
        new(OpeningSoon, "Season opens soon", [Role.CrewLead, Role.Landowner], true, true),
        new(ClosingEarly, "Season ends early", [Role.CrewLead, Role.Landowner], true, true),
        new(Reminder, "Work on the next day", Crews, true, true, HasDays: true),
        new(DoNotStart, "Do not start", Crews, false, false),
        new(StopWork, "Stop work", Everybody, false, false),
        new(FollowUp, "Follow-up work is due", Consultants, true, true),
        new(Certificate, "Certificates expire", Crews, true, true),
        new(Outage, "Weather has stopped coming", Consultants, true, true),
        new(MissedCheckIn, "A crew has not checked in", Everybody, false, false),
        new(TakenOver, "Somebody sees to a crew", Everybody, false, false),
        new(CrewFine, "The crew is fine", Everybody, false, false),
        new(Unreachable, "Somebody is not reached", Consultants, false, false),
    ];

    private static readonly FrozenDictionary<string, NoticeKind> ByKey = All.ToFrozenDictionary(kind => kind.Key);

    /// <returns>The kind, or null where there is none with this key.</returns>
    public static NoticeKind? Find(string key) => ByKey.GetValueOrDefault(key);

    /// <summary>Whether a recipient may do without notices of a kind.</summary>
    public static bool MayBeTurnedOff(string key) => ByKey[key].MayBeTurnedOff;
}
