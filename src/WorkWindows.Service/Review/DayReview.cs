using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Review;

/// <summary>Why a day was as it was, from what was kept with the decision.</summary>
/// <param name="TaskId">The task.</param>
/// <param name="Task">What it is, in a few words.</param>
/// <param name="Property">Where.</param>
/// <param name="Day">The day, in <paramref name="TimeZone"/>.</param>
/// <param name="TimeZone">The property's zone.</param>
/// <param name="DecisionId">The decision that stood on the day.</param>
/// <param name="DecidedAt">When it was made.</param>
/// <param name="Hash">SHA-256 of its content, as it was noted.</param>
/// <param name="State">What it said of the day.</param>
/// <param name="Deciding">The rules that made the state, as the stored inputs give them.</param>
/// <param name="AlsoSpoke">The other rules that held, may have held or were lifted.</param>
/// <param name="Held">The ids of the rules that the decision itself says held.</param>
/// <param name="Known">What was known: forecast, observations, exceptions, the rule packs that decided.</param>
/// <param name="Weather">What was known of the day's weather and light.</param>
/// <param name="Packs">All rule packs that stood.</param>
/// <param name="Replay">What the stored inputs give when they are evaluated again.</param>
/// <param name="Since">What is said of the day with what is known now; null when nobody asked.</param>
/// <param name="History">What was decided about the day, the latest first.</param>
/// <param name="ReadAt">When all this was put together.</param>
public sealed record DayReview(
    Guid TaskId, string Task, string Property, LocalDate Day, string TimeZone, Guid DecisionId, Instant DecidedAt,
    string Hash, DayState State, IReadOnlyList<RuleReason> Deciding, IReadOnlyList<RuleReason> AlsoSpoke,
    IReadOnlyList<string> Held, IReadOnlyList<Known> Known, IReadOnlyList<Known> Weather, IReadOnlyList<Known> Packs,
    Replay Replay, Since? Since, IReadOnlyList<Decided> History, Instant ReadAt)
{
    /// <summary>As in 'Closed on Tue 14 Apr 2026'.</summary>
    public string Headline => $"{Capital(Wording.Of(State))} on {DayWords.WithYear(Day)}";

    internal string At(Instant instant) => DayWords.At(instant, DateTimeZoneProviders.Tzdb[TimeZone]);

    private static string Capital(string word) => string.Concat(char.ToUpperInvariant(word[0]), word[1..]);
}

/// <param name="What">What was known.</param>
/// <param name="Value">Its value and how it was known.</param>
public sealed record Known(string What, string Value);

/// <param name="Hash">SHA-256 of what the stored inputs give now; null when they cannot be evaluated.</param>
/// <param name="Differences">What differs from what was decided, a sentence each; none when nothing does.</param>
public sealed record Replay(string? Hash, IReadOnlyList<string> Differences)
{
    public bool IsSame => Differences.Count == 0;
}

/// <param name="State">What is said of the day with today's readings, rules and exceptions.</param>
/// <param name="Changes">
/// What makes it another day, and the rule packs and exceptions that are others, a sentence each.
/// </param>
/// <param name="Readings">The readings of the day that are others without making it another day.</param>
public sealed record Since(DayState State, IReadOnlyList<string> Changes, IReadOnlyList<string> Readings);

/// <param name="Id">The decision.</param>
/// <param name="At">When it was made.</param>
/// <param name="State">What it said of the day.</param>
/// <param name="Hash">SHA-256 of its content.</param>
public sealed record Decided(Guid Id, Instant At, DayState State, string Hash);
