namespace WorkWindows.Engine.Weather.Quality;

/// <summary>Why a reading is not used. The first reason that is found stands.</summary>
public enum RejectionReason
{
    /// <summary>The source itself flags it.</summary>
    SourceFlag,

    /// <summary>The day has another value of the element, and they differ.</summary>
    Duplicate,

    /// <summary>
    /// It lies beyond every reading that was ever recognized on earth, or is of a kind that cannot be.
    /// </summary>
    Impossible,

    /// <summary>The day's minimum is above its maximum; neither is used.</summary>
    MinimumAboveMaximum,

    /// <summary>It is one of many days in a row with the very same value.</summary>
    Stuck,

    /// <summary>Its month has the values of another month of the record, day by day; neither is used.</summary>
    RepeatedMonth,

    /// <summary>It is too far from the other extreme of the day and of those beside it.</summary>
    DailyRange,

    /// <summary>
    /// It stands out from the day before and the day after, the same way, by more than its season knows.
    /// </summary>
    Spike,

    /// <summary>No other year of the record has anything like it at its time of the year.</summary>
    OutOfSeason,

    /// <summary>No station around has anything like it on the day, the day before or the day after.</summary>
    UnlikeNeighbours,
}
