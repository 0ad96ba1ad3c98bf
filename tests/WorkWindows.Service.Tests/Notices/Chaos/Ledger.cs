namespace WorkWindows.Service.Tests.Notices.Chaos;

/// <summary>A mail that the server has taken.</summary>
/// <param name="At">Its place in the order of all that happened.</param>
/// <param name="Message">The number of the message.</param>
/// <param name="MessageId">The Message-ID that it came under.</param>
/// <param name="Fate">What happened then.</param>
/// <param name="Worker">The process that sent it.</param>
internal sealed record Acceptance(int At, int Message, string MessageId, Fate Fate, int Worker);

/// <summary>What happened, in order.</summary>
internal sealed class Ledger
{
    private readonly Lock _lock = new();
    private readonly List<Acceptance> _accepted = [];
    private readonly HashSet<int> _kills = [];
    private readonly Dictionary<(int Worker, Guid Message), string> _unmarked = [];
    private int _outages;
    private int _events;

    public IReadOnlyList<Acceptance> Accepted => _accepted;

    public int Kills => _kills.Count;

    public int Outages => _outages;

    public void Accept(int message, string messageId, Fate fate, int worker)
    {
        lock (_lock)
            _accepted.Add(new(_events++, message, messageId, fate, worker));
    }

    public void Kill(int worker)
    {
        lock (_lock)
            _kills.Add(worker);
    }

    public void DatabaseStops() => Interlocked.Increment(ref _outages);

    /// <summary>A worker says that it did not learn whether a message was taken, or could not mark it as sent.</summary>
    public void Unmarked(int worker, Guid message, string why)
    {
        lock (_lock)
            _unmarked[(worker, message)] = why;
    }

    /// <summary>
    /// Why nobody could mark the message as sent after this acceptance: the worker that had it says so, or was killed
    /// before it sent another.
    /// </summary>
    /// <param name="accepted">By the server.</param>
    /// <param name="message">The id of its row.</param>
    /// <returns>The cause, or null where there is none and the mail should not have come again.</returns>
    public string? WhyUnmarked(Acceptance accepted, Guid message)
    {
        lock (_lock)
        {
            if (_unmarked.TryGetValue((accepted.Worker, message), out var why))
                return why;
            var wasItsLast = !_accepted.Any(later => later.Worker == accepted.Worker && later.At > accepted.At);
            // The server may write its acceptance down after the kill.
            return wasItsLast && _kills.Contains(accepted.Worker) ? "the worker was killed" : null;
        }
    }
}
