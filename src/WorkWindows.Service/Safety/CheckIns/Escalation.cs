using System.Collections.Immutable;
using NodaTime;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>
/// Decides whom a crew that is not heard from is looked for by: a pure function of what is stored and of the time, so
/// that it does not matter how often, how late or on how many servers it is asked.
/// </summary>
public static class Escalation
{
    /// <param name="watch">What is stored of a watch that has not ended.</param>
    /// <param name="now">The time of asking.</param>
    public static EscalationPlan Plan(WatchTimes watch, Instant now)
    {
        // Nothing is ever due later than that, unless the clock was set back: a call waits an interval longer at most.
        var dueAt = Instant.Min(watch.DueAt, now + watch.Interval);
        var calledAt = dueAt + watch.Grace;
        if (watch.Alarm is null && now < calledAt)
            return new(dueAt, NextCallAt: null, []);

        var (written, stored) = watch.Alarm ?? new(0, calledAt);
        var next = Instant.Min(stored, now + watch.Escalation);
        var calls = ImmutableArray.CreateBuilder<PlannedCall>();
        // After an outage all who should have been written to by now are, each once.
        for (; next <= now && calls.Count < watch.Contacts; next += watch.Escalation)
            calls.Add(new(written + calls.Count, (written + calls.Count) % watch.Contacts));
        return new(dueAt, next <= now ? now + watch.Escalation : next, calls.ToImmutable());
    }
}

/// <summary>What is stored of a watch that bears on its escalation.</summary>
/// <param name="Interval">From one check-in to the next, above zero.</param>
/// <param name="Grace">From the due time to the first call.</param>
/// <param name="Escalation">From one call to the next, above zero.</param>
/// <param name="Contacts">How many there are, at least one.</param>
/// <param name="DueAt">When the crew is to be heard from.</param>
/// <param name="Alarm">The missed check-in that nobody has acknowledged, or null.</param>
public sealed record WatchTimes(
    Duration Interval, Duration Grace, Duration Escalation, int Contacts, Instant DueAt, AlarmTimes? Alarm);

/// <param name="Written">How many calls have been written.</param>
/// <param name="NextCallAt">When the next one is to be written.</param>
public sealed record AlarmTimes(int Written, Instant NextCallAt);

/// <summary>What is to be stored now.</summary>
/// <param name="DueAt">When the crew is to be heard from; earlier than stored where the clock was set back.</param>
/// <param name="NextCallAt">When the next call is due after these; null when no check-in was missed.</param>
/// <param name="Calls">The calls to write now, in order.</param>
public sealed record EscalationPlan(Instant DueAt, Instant? NextCallAt, ImmutableArray<PlannedCall> Calls);

/// <param name="Number">Counts all calls of a missed check-in from 0.</param>
/// <param name="Place">The contact's place in the order.</param>
public sealed record PlannedCall(int Number, int Place);
