namespace WorkWindows.Feeds.Tests.Manners;

/// <summary>
/// Time that stands still: pauses shorter than the limit of an attempt are over at once and noted, and that limit is
/// reached when the test says so.
/// </summary>
internal sealed class ManualTime(TimeSpan attempt) : TimeProvider
{
    private readonly HashSet<Timer> _attempts = [];
    private readonly Lock _lock = new();

    private TimeSpan Attempt { get; } = attempt;

    public DateTimeOffset Now { get; set; } = new(2026, 4, 12, 12, 0, 0, TimeSpan.Zero);

    /// <summary>The pauses before further attempts.</summary>
    public List<TimeSpan> Pauses { get; } = [];

    public override DateTimeOffset GetUtcNow() => Now;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = new Timer(this, () => callback(state));
        timer.Change(dueTime, period);
        return timer;
    }

    /// <summary>Lets the time of the attempt that is under way run out.</summary>
    public void RunOut()
    {
        Timer[] due;
        lock (_lock)
            due = [.. _attempts];
        foreach (var timer in due)
            timer.Fire();
    }

    private sealed class Timer(ManualTime time, Action fire) : ITimer
    {
        public void Fire() => fire();

        public bool Change(TimeSpan dueTime, TimeSpan period)
        {
            lock (time._lock)
            {
                time._attempts.Remove(this);
                if (dueTime == time.Attempt)
                    time._attempts.Add(this);
                if (dueTime < TimeSpan.Zero || dueTime >= time.Attempt)
                    return true;
                time.Pauses.Add(dueTime);
            }
            ThreadPool.QueueUserWorkItem(_ => fire());
            return true;
        }

        public void Dispose()
        {
            lock (time._lock)
                time._attempts.Remove(this);
        }

        public ValueTask DisposeAsync()
        {
            Dispose();
            return ValueTask.CompletedTask;
        }
    }
}
