using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Chances;

/// <summary>The first working season of some days.</summary>
/// <param name="First">Index of its first workable day; null without any.</param>
/// <param name="Last">Index of its last one; null without any, or when it may go on after the days.</param>
/// <param name="WorkableDays">How many of its days are workable.</param>
internal readonly record struct WorkingSeason(int? First, int? Last, int WorkableDays)
{
    /// <param name="workable">The workable days.</param>
    /// <param name="longestBreakDays">More days without work than this end the season.</param>
    public static WorkingSeason Of(DayBits workable, int longestBreakDays)
    {
        var (first, last, count) = ((int?)null, 0, 0);
        foreach (var (from, to) in workable.Runs())
        {
            if (first is not null && from - last - 1 > longestBreakDays)
                break;
            first ??= from;
            last = to;
            count += to - from + 1;
        }
        return first is null ? default
            : new(first, workable.Length - 1 - last > longestBreakDays ? last : null, count);
    }
}

/// <summary>
/// The working season of one member, as far as its unknown days let it be told: whatever is the same whether they are
/// all workable or none is known.
/// </summary>
/// <param name="Sure">The season when no unknown day is workable.</param>
/// <param name="OpeningIsKnown">Whether its first day, or that there is none, is known.</param>
/// <param name="ClosingIsKnown">The same of its last day.</param>
internal readonly record struct MemberSeason(WorkingSeason Sure, bool OpeningIsKnown, bool ClosingIsKnown)
{
    /// <inheritdoc cref="WorkingSeason.Of"/>
    public static MemberSeason Of(MemberDays days, int longestBreakDays)
    {
        var sure = WorkingSeason.Of(days.Workable, longestBreakDays);
        var most = days.Unknown.IsEmpty ? sure : WorkingSeason.Of(days.Workable | days.Unknown, longestBreakDays);
        return new(sure, sure.First == most.First, sure.First == most.First && sure.Last == most.Last);
    }
}
