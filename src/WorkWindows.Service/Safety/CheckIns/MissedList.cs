using NodaTime;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>The missed check-ins of a watch that have not been cleared, as pages show them.</summary>
public sealed record MissedList(WatchView Watch, DateTimeZone Zone)
{
    public IReadOnlyList<MissedView> Open => [.. Watch.Missed.Where(missed => missed.ClearedAt is null)];

    public static string Words(CheckInKind kind) => kind switch
    {
        CheckInKind.Started => "watch started",
        CheckInKind.Fine => "fine",
        CheckInKind.Out => "out",
    };
}
