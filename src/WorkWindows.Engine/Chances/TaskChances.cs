using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Chances;

/// <summary>How likely a task may be done on each of some days, counted over the members of an ensemble.</summary>
/// <remarks>Source: docs/rules/chances.md.</remarks>
public sealed class TaskChances
{
    /// <summary>
    /// As many days without work end a working season; a shorter break is one of its pauses. Common practice, no
    /// source.
    /// </summary>
    public const int LongestBreakDays = 13;

    private readonly Ensemble ensemble;
    private readonly ImmutableArray<MemberSeason> seasons;
    private readonly int[] workable, unknown;
    private readonly ImmutableArray<double?> shares;

    internal TaskChances(DaySpan days, Ensemble ensemble, ImmutableArray<MemberDays> members)
    {
        (Days, this.ensemble, Members) = (days, ensemble, members);
        seasons = [.. members.Select(member => MemberSeason.Of(member, LongestBreakDays))];
        (workable, unknown) = (new int[days.Count], new int[days.Count]);
        foreach (var member in members)
        {
            for (var day = 0; day < days.Count; day++)
            {
                workable[day] += member.Workable[day] ? 1 : 0;
                unknown[day] += member.Unknown[day] ? 1 : 0;
            }
        }
        shares = Shares.Of(workable, unknown, members.Length);
    }

    public DaySpan Days { get; }

    /// <summary>What each member says, in the order of the ensemble's years.</summary>
    public ImmutableArray<MemberDays> Members { get; }

    /// <summary>The year behind each member.</summary>
    public ImmutableArray<int> Years => ensemble.Years;

    /// <summary>The chance of a day.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The day lies outside <see cref="Days"/>.</exception>
    public DayChance this[LocalDate date]
    {
        get
        {
            if (!Days.Contains(date))
                throw new ArgumentOutOfRangeException(nameof(date), date, $"The chances cover {Days}.");
            var day = Days.IndexOf(date);
            return new(workable[day], unknown[day], Members.Length, shares[day]);
        }
    }

    /// <summary>The first workable day. A member with an unknown day before it does not know.</summary>
    public DateSpread Opens => Spread(season => season.OpeningIsKnown, season => season.First);

    /// <summary>
    /// The last workable day before a break of more than <see cref="LongestBreakDays"/> days; it does not happen in
    /// members whose working season lasts to the end of the days. A member that an unknown day may prolong, or open
    /// sooner, does not know.
    /// </summary>
    public DateSpread Closes => Spread(season => season.ClosingIsKnown, season => season.Last);

    /// <summary>
    /// The mean number of workable days until the working season closes, of the members that know when it does; 0 in
    /// those in which it never opens. Unknown days do not count. Null when too many do not know.
    /// </summary>
    public double? WorkableDays => Closes.IsTold
        ? seasons.Where(season => season.ClosingIsKnown).Average(season => season.Sure.WorkableDays)
        : null;

    /// <summary>
    /// Leaf-out of the first spring that ends in or after the days, as the weather of the members brings it.
    /// </summary>
    public DateSpread LeafOut
    {
        get
        {
            var year = ensemble.Members.SelectMany(member => member.Events)
                .Where(e => e.Kind == SeasonEventKind.LeafOut && e.Date >= Days.First)
                .Select(e => e.Date.Year).DefaultIfEmpty(Days.First.Year).Min();
            return DateSpread.Of(ensemble.Members.Select(member => member.Event(SeasonEventKind.LeafOut, year)?.Date));
        }
    }

    private DateSpread Spread(Func<MemberSeason, bool> isKnown, Func<WorkingSeason, int?> day) => DateSpread.Of(
        seasons.Where(isKnown).Select(season => day(season.Sure) is { } index ? Days[index] : (LocalDate?)null),
        seasons.Count(season => !isKnown(season)));
}
