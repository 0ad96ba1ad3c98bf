using NodaTime;

namespace WorkWindows.Engine.Days;

/// <summary>Consecutive local dates: the axis that every signal and every set of days is laid out on.</summary>
/// <param name="First">The first date.</param>
/// <param name="Count">How many dates, at least one.</param>
public readonly record struct DaySpan(LocalDate First, int Count)
{
    public int Count { get; } = Count > 0
        ? Count
        : throw new ArgumentOutOfRangeException(nameof(Count), Count, "A span of days holds at least one day.");

    /// <summary>The last date, included.</summary>
    public LocalDate Last => First.PlusDays(Count - 1);

    /// <summary>The dates from <paramref name="first"/> to <paramref name="last"/>, both included.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The last date precedes the first.</exception>
    public static DaySpan Between(LocalDate first, LocalDate last) => new(first, Period.DaysBetween(first, last) + 1);

    public LocalDate this[int index] => First.PlusDays(index);

    /// <summary>Where a date stands in the span; negative before it, <see cref="Count"/> or more after it.</summary>
    public int IndexOf(LocalDate date) => Period.DaysBetween(First, date);

    public bool Contains(LocalDate date) => date >= First && date <= Last;

    public override string ToString() => $"{First:R}/{Last:R}";
}
