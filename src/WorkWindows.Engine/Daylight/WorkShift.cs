using NodaTime;

namespace WorkWindows.Engine.Daylight;

/// <summary>The hours of a day that a crew works, in the time zone of the place.</summary>
public sealed record WorkShift
{
    /// <exception cref="ArgumentException">
    /// The shift does not end after it starts; it may not run over midnight.
    /// </exception>
    public WorkShift(LocalTime start, LocalTime end)
    {
        if (end <= start)
            throw new ArgumentException($"A shift from {start:t} to {end:t} ends before it starts.", nameof(end));
        (Start, End) = (start, end);
    }

    /// <summary>From 08:00 to 17:00: common practice, no source.</summary>
    public static WorkShift Default { get; } = new(new(8, 0), new(17, 0));

    public LocalTime Start { get; }

    public LocalTime End { get; }
}
