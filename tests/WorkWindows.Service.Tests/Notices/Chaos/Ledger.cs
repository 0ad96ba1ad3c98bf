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
    private readonly Dictionary<int, int> _kills = [];
    private readonly List<(int Down, int Up)> _outages = [];
    private int _events;

    public IReadOnlyList<Acceptance> Accepted => _accepted;

    public int Kills => _kills.Count;

    public int Outages => _outages.Count;

    public void Accept(int message, string messageId, Fate fate, int worker)
    {
        lock (_lock)
            _accepted.Add(new(_events++, message, messageId, fate, worker));
    }

    public void Kill(int worker)
    {
        lock (_lock)
            _kills.TryAdd(worker, _events++);
    }

    public void DatabaseStops()
    {
        lock (_lock)
            _outages.Add((_events++, int.MaxValue));
    }

    public void DatabaseAnswers()
    {
        lock (_lock)
            _outages[^1] = (_outages[^1].Down, _events++);
    }

    /// <summary>
    /// Why nobody could mark the message as sent after this acceptance: a worker does one thing after the other, so one
    /// that sends another mail has marked this one, or failed to while the database was away.
    /// </summary>
    /// <returns>The cause, or null where there is none and the mail should not have come again.</returns>
    public string? WhyUnmarked(Acceptance accepted)
    {
        if (accepted.Fate is Fate.DropAfterAcceptance or Fate.SlowAfterAcceptance)
            return $"{accepted.Fate}";
        var next = _accepted.FirstOrDefault(later => later.Worker == accepted.Worker && later.At > accepted.At)?.At
            ?? int.MaxValue;
        if (next == int.MaxValue && _kills.TryGetValue(accepted.Worker, out var killed) && killed > accepted.At)
            return "the worker was killed";
        // It stopped before the worker's next mail, and was not back when this one was taken.
        return _outages.Any(outage => outage.Down < next && outage.Up > accepted.At) ? "the database was away" : null;
    }
}
