using System.Collections.Immutable;
using WorkWindows.Planning.Cases;

namespace WorkWindows.Planning.Crews;

/// <summary>
/// What a minute of each crew's day is worth, found by raising the price of days that too much work wants and lowering it
/// where too little does (the Lagrangian relaxation of the hours of crews, M. L. Fisher, Management Science 27, 1981).
/// They bound every plan from above, and tell which ways of a task are worth looking at.
/// </summary>
internal sealed class DayPrices
{
    private const int Rounds = 300;

    /// <summary>Rounds without a better bound after which steps are halved: our own choice, as the first step is.</summary>
    private const int Patience = 10;

    private const double FirstStep = 0.05;
    private const double MinutesPerHour = 60;
    private readonly PlanCase plan;
    private readonly FixedWork fixedWork;
    private readonly ImmutableArray<ImmutableArray<PricedWay>> ways;
    private readonly double[] room;
    private double[] prices;

    private DayPrices(PlanCase plan, FixedWork fixedWork, ImmutableArray<ImmutableArray<TaskWay>> ways, Func<TaskWay, double> points)
    {
        (this.plan, this.fixedWork) = (plan, fixedWork);
        this.ways = [.. ways.Select(task => task.Select(way => Price(way, points(way))).ToImmutableArray())];
        room =
        [
            .. plan.Crews.SelectMany(crew => Enumerable.Range(0, plan.Days.Length).Select(plan.DayAt)
                .Select(day => Math.Max(0, crew.HoursPerDay * MinutesPerHour - fixedWork.MinutesOn(crew, day)))),
        ];
        prices = new double[room.Length];
    }

    /// <summary>No plan has more points.</summary>
    public double Bound { get; private set; } = double.PositiveInfinity;

    /// <param name="plan">The case.</param>
    /// <param name="fixedWork">What is set in it.</param>
    /// <param name="ways">The ways of each task.</param>
    /// <param name="points">What a way brings, without travel.</param>
    public static DayPrices Of(
        PlanCase plan, FixedWork fixedWork, ImmutableArray<ImmutableArray<TaskWay>> ways, Func<TaskWay, double> points)
    {
        var made = new DayPrices(plan, fixedWork, ways, points);
        made.Settle();
        return made;
    }

    /// <summary>The ways of a task that are worth most at these prices, in their own order.</summary>
    public ImmutableArray<TaskWay> Best(int task, int most) => ways[task].Length <= most
        ? [.. ways[task].Select(way => way.Way)]
        :
        [
            .. ways[task].Select((way, index) => (way, index)).OrderByDescending(one => Worth(one.way, prices)).Take(most)
                .OrderBy(one => one.index).Select(one => one.way.Way),
        ];

    private void Settle()
    {
        var (tried, best) = ((double[])prices.Clone(), prices);
        var (pace, stale) = (1.0, 0);
        for (var round = 0; round < Rounds; round++)
        {
            var wanted = new double[room.Length];
            var bound = Total(tried, wanted);
            if (bound < Bound - 1e-9)
                (Bound, best, stale) = (bound, (double[])tried.Clone(), 0);
            else if (++stale == Patience)
                (pace, stale, tried) = (pace / 2, 0, (double[])best.Clone());
            var square = 0.0;
            for (var day = 0; day < room.Length; day++)
            {
                wanted[day] -= room[day];
                if (wanted[day] > 0 || tried[day] > 0)
                    square += wanted[day] * wanted[day];
            }
            if (square == 0)
                break;
            var step = pace * FirstStep * Math.Abs(bound) / square;
            for (var day = 0; day < room.Length; day++)
                tried[day] = Math.Max(0, tried[day] + step * wanted[day]);
        }
        prices = best;
    }

    /// <summary>The best that each task brings by itself when days are paid for, and what the days are paid.</summary>
    private double Total(double[] at, double[] wanted)
    {
        var total = 0.0;
        for (var day = 0; day < room.Length; day++)
            total += at[day] * room[day];
        foreach (var task in ways)
        {
            var (most, taken) = (0.0, (PricedWay?)null);
            foreach (var way in task)
            {
                if (Worth(way, at) is var worth && worth > most)
                    (most, taken) = (worth, way);
            }
            total += most;
            if (taken is null)
                continue;
            for (var index = 0; index < taken.Slots.Length; index++)
                wanted[taken.Slots[index]] += taken.Minutes[index];
        }
        return total;
    }

    private static double Worth(PricedWay way, double[] at)
    {
        var worth = way.Points;
        for (var index = 0; index < way.Slots.Length; index++)
            worth -= at[way.Slots[index]] * way.Minutes[index];
        return worth;
    }

    /// <summary>
    /// Each minute of work bears its part of the drive of a day that is worked in full: at one place no day has more work
    /// than the drive leaves, so that together no more is borne than the drive takes.
    /// </summary>
    private PricedWay Price(TaskWay way, double points)
    {
        var (task, crew) = (plan.Tasks[way.Task], plan.Crews[way.Crew]);
        var drive = plan.Travel.RoundTripMinutes(crew.Base, task.Place);
        var left = crew.HoursPerDay * MinutesPerHour - drive;
        var slots = way.Days.Select(day => way.Crew * plan.Days.Length + day).ToArray();
        var minutes = new double[slots.Length];
        for (var index = 0; index < slots.Length; index++)
        {
            var paid = fixedWork.IsAt(crew, task.Place, plan.DayAt(way.Days[index]));
            var share = paid ? 0 : way.Minutes[index] / left;
            minutes[index] = way.Minutes[index] + share * drive;
            points -= share * drive / MinutesPerHour * plan.Weights.PointsPerTravelHour;
        }
        return new(way, points, slots, minutes);
    }

    private sealed record PricedWay(TaskWay Way, double Points, int[] Slots, double[] Minutes);
}
