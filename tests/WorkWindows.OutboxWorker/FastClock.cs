using NodaTime;

namespace WorkWindows.OutboxWorker;

/// <summary>A clock on which leases and pauses of minutes take seconds, and which all workers share.</summary>
/// <param name="origin">The moment at which it agrees with the real one.</param>
/// <param name="speed">How many of its seconds pass in a real one.</param>
public sealed class FastClock(Instant origin, int speed) : IClock
{
    public Instant GetCurrentInstant()
    {
        var real = Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow());
        // PostgreSQL keeps microseconds.
        return origin + Duration.FromMilliseconds((long)((real - origin).TotalMilliseconds * speed));
    }
}
