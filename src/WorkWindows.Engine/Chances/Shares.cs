using System.Collections.Immutable;

namespace WorkWindows.Engine.Chances;

/// <summary>Turns counts of members into chances.</summary>
/// <remarks>
/// Thirty years are a small sample: of days whose true chance is 70 %, one in six would show less than 60 % or more
/// than 80 %. So a day that divides the members is drawn towards the days around it. Source: docs/rules/chances.md.
/// </remarks>
internal static class Shares
{
    /// <summary>When more than this share of the members leaves a day unknown, no chance is told.</summary>
    public const double MostUnknown = 0.1;

    /// <summary>The days around count as much as so many members.</summary>
    public const double MembersOfDaysAround = 6;

    /// <summary>Days on each side.</summary>
    public const int HalfWindowDays = 15;

    /// <param name="workable">How many members make each day workable.</param>
    /// <param name="unknown">How many leave it unknown.</param>
    /// <param name="members">How many there are.</param>
    /// <returns>
    /// A chance a day, 0 to 1; null where it cannot be told. A day on which all members agree is 0 or 1.
    /// </returns>
    public static ImmutableArray<double?> Of(ReadOnlySpan<int> workable, ReadOnlySpan<int> unknown, int members)
    {
        var raw = new double?[workable.Length];
        for (var day = 0; day < raw.Length; day++)
        {
            if (members > 0 && unknown[day] <= MostUnknown * members)
                raw[day] = (double)workable[day] / (members - unknown[day]);
        }
        var shares = ImmutableArray.CreateBuilder<double?>(raw.Length);
        for (var day = 0; day < raw.Length; day++)
        {
            var knowing = members - unknown[day];
            shares.Add(raw[day] is { } share and > 0 and < 1
                ? (share * knowing + MembersOfDaysAround * Around(raw, day)) / (knowing + MembersOfDaysAround)
                : raw[day]);
        }
        return shares.MoveToImmutable();
    }

    /// <summary>The mean share of the days around that divide the members too, the day itself included.</summary>
    private static double Around(double?[] raw, int day)
    {
        var (sum, count) = (0.0, 0);
        var last = Math.Min(day + HalfWindowDays, raw.Length - 1);
        for (var near = Math.Max(day - HalfWindowDays, 0); near <= last; near++)
        {
            if (raw[near] is not ({ } share and > 0 and < 1))
                continue;
            sum += share;
            count++;
        }
        return sum / count;
    }
}
