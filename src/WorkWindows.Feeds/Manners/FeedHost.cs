using NodaTime;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds.Manners;

/// <summary>One host: whether it may be asked now.</summary>
internal sealed class FeedHost(string name, IClock clock, int requestsADay)
{
    private readonly Lock _lock = new();
    private LocalDate _day;
    private int _sent;
    private Instant _quietUntil = Instant.MinValue;

    /// <summary>Held by the one request that is under way, retries and all.</summary>
    public SemaphoreSlim Turn { get; } = new(1);

    /// <summary>Notes that the host asked to be left alone.</summary>
    public void LeaveAlone(Duration time)
    {
        lock (_lock)
            _quietUntil = Instant.Max(_quietUntil, clock.GetCurrentInstant() + time);
    }

    /// <exception cref="FeedUnreachableException">The host asked to be left alone, and still is.</exception>
    public void ThrowIfLeftAlone()
    {
        lock (_lock)
        {
            var left = _quietUntil - clock.GetCurrentInstant();
            if (left > Duration.Zero)
                throw new FeedUnreachableException($"{name} asked to be left alone and is not asked.", left, null);
        }
    }

    /// <summary>Counts a request that is about to be sent.</summary>
    /// <exception cref="FeedBudgetException">The day's requests are used up; it is not to be sent.</exception>
    public void Spend()
    {
        lock (_lock)
        {
            var now = clock.GetCurrentInstant();
            var today = now.InUtc().Date;
            if (today != _day)
                (_day, _sent) = (today, 0);
            if (_sent >= requestsADay)
            {
                var tomorrow = today.PlusDays(1).AtMidnight().InUtc().ToInstant();
                throw new FeedBudgetException(name, requestsADay, tomorrow - now);
            }
            _sent++;
        }
    }
}
