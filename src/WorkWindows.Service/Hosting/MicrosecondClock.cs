using NodaTime;

namespace WorkWindows.Service.Hosting;

/// <summary>Tells time as finely as PostgreSQL keeps it, so that what is read back equals what was written.</summary>
public sealed class MicrosecondClock(IClock clock) : IClock
{
    private const long TicksPerMicrosecond = 10;

    public Instant GetCurrentInstant()
    {
        var ticks = clock.GetCurrentInstant().ToUnixTimeTicks();
        return Instant.FromUnixTimeTicks(ticks - (ticks % TicksPerMicrosecond));
    }
}
