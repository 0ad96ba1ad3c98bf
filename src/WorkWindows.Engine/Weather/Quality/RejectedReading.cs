using NodaTime;

namespace WorkWindows.Engine.Weather.Quality;

/// <summary>A reading that is kept but never used.</summary>
/// <param name="Date">The day that its source books it to.</param>
/// <param name="Element">What was measured.</param>
/// <param name="Value">The value, in the unit of the element.</param>
/// <param name="Reason">Why it is not used.</param>
public readonly record struct RejectedReading(
    LocalDate Date, DailyElement Element, double Value, RejectionReason Reason)
{
    /// <summary>The reason in plain words, to follow 'not used: '.</summary>
    public static string WordsOf(RejectionReason reason) => reason switch
    {
        RejectionReason.SourceFlag => "its source flags it",
        RejectionReason.Duplicate => "the day has two values that differ",
        RejectionReason.Impossible => "beyond any reading on record",
        RejectionReason.MinimumAboveMaximum => "the minimum is above the maximum",
        RejectionReason.Stuck => "the same value for two weeks or more",
        RejectionReason.RepeatedMonth => "the month repeats another one day by day",
        RejectionReason.DailyRange => "too far from the other extreme of the days around",
        RejectionReason.Spike => "a leap from the day before and back",
        RejectionReason.OutOfSeason => "like nothing in other years at this time",
        RejectionReason.UnlikeNeighbours => "like nothing at the stations around",
    };
}
