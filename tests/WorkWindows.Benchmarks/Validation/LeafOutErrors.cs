using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Tests.Phenology;

namespace WorkWindows.Benchmarks.Validation;

/// <summary>How far predicted leaf-out is off at places whose springs were seen.</summary>
internal static class LeafOutErrors
{
    private const int LeastSprings = 4;
    private const int BreakingLeafBuds = 371;

    public static string Section()
    {
        var aspen = ObservedPlace.Of(
            ObservedSprings.Read("aspen_obs.csv", "aspen_temperature.csv.gz", BreakingLeafBuds));
        var blueberry = ObservedPlace.Of(
            ObservedSprings.Read("vaccinium_obs.csv", "vaccinium_temperature.csv", BreakingLeafBuds)).Single();
        var rows = aspen.OrderByDescending(place => place.IsEastern)
            .Select(place => (Name: $"aspen, place {place.Name}", place.LongitudeDeg,
                Springs: HeldOutSpring.Of(place, BudBreak.TremblingAspen, LeastSprings)))
            .Append((Name: "blueberry, Harvard Forest", blueberry.LongitudeDeg,
                Springs: HeldOutSpring.Of(blueberry, LeafOut.Default, LeastSprings)))
            .Where(place => place.Springs.Count > 0).ToList();
        return $"""
            ## Leaf-out by place

            Every spring of a place with at least {LeastSprings} is predicted from the temperatures of its own year and from
            the place's other springs, and compared with the day on which it was seen; the calendar is the mean day of the
            other springs. [rules/leaf-out.md](rules/leaf-out.md) says which springs are left out, and why one place misses
            the aim of four days.

            | place | longitude | springs | mean error | of the calendar | inside the 80 % interval |
            | --- | --- | --- | --- | --- | --- |
            {string.Join('\n', rows.Select(row => $"| {row.Name} | {row.LongitudeDeg:0.0}° | {row.Springs.Count} "
                + $"| {row.Springs.Average(spring => Math.Abs(spring.ErrorDays)):0.00} d "
                + $"| {row.Springs.Average(spring => Math.Abs(spring.CalendarErrorDays)):0.00} d "
                + $"| {row.Springs.Count(spring => spring.IsInside)} |"))}

            """;
    }
}
