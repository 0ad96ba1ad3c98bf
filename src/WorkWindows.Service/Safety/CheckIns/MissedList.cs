using NodaTime;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>The missed check-ins of a watch that have not been cleared, as pages show them.</summary>
public sealed record MissedList(WatchView Watch, DateTimeZone Zone)
{
    public IReadOnlyList<MissedView> Open => [.. Watch.Missed.Where(missed => missed.ClearedAt is null)];

    /// <returns>Whether a call reached its contact, in capitals where somebody must see to it.</returns>
    public static string Words(CallView call, bool mailLeaves) =>
        !mailLeaves ? "NOBODY REACHED, only a file"
        : call.IsLost ? "NOT DELIVERED, call them"
        : call.SentAt is null ? "NOT SENT YET"
        : "sent";

    public static string Words(CheckInKind kind) => kind switch
    {
        CheckInKind.Started => "watch started",
        CheckInKind.Fine => "fine",
        CheckInKind.Out => "out",
    };
}
