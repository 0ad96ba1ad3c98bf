using NodaTime;

namespace WorkWindows.Service.Hosting;

/// <summary>
/// The clock says it is earlier than when something was stored that is never changed: a decision, or what was known of
/// the weather. Nothing may follow it until the clock is right.
/// </summary>
public sealed class ClockSetBackException(Instant now, Instant storedAt) : InvalidOperationException(
    $"The clock says {now}, but something was stored at {storedAt}. Set the clock right; nothing was stored.");
