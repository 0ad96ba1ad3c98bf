using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Tests.Weather;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Phenology;

/// <summary>
/// Order of spring by degree-days above 50 °F at Wooster OH (Ohio State University Extension, as quoted): silver maple
/// in full bloom 42, eastern tent caterpillars hatch 92, black locust in full bloom 548, emerald ash borers emerge 550.
/// </summary>
public sealed class WoosterOrderTests
{
    private static readonly DailySeries Wooster = ReferenceStations.Record("USC00339312").Record.Usable;

    [Fact]
    public void Sums_KeepThePublishedOrder_InEverySpringThatIsKnown()
    {
        var springs = Enumerable.Range(1985, 30)
            .Select(year => new[] { 42.0, 92, 548, 550 }.Select(needed => Reached(year, needed)).ToArray())
            .Where(days => days.All(day => day is not null)).ToList();

        Assert.Equal(27, springs.Count);
        Assert.All(springs, days => Assert.True(
            days[0] < days[1] && days[1] < days[2] && days[2] <= days[3] && days[3] <= days[2] + 1));
        // Extension's names of the times: the maple in early spring, the ash borer in late May and June.
        Assert.All(springs, days => Assert.True(days[0] < 121 && days[3] is > 121 and < 182));
    }

    /// <summary>The day of the year; null where a day before it is missing.</summary>
    private static int? Reached(int year, double neededF)
    {
        var (min, max) = (Wooster[DailyElement.MinTemperatureC]!, Wooster[DailyElement.MaxTemperatureC]!);
        var model = new ThermalTime(new(1, 1), 10, neededF / 1.8);
        var means = Enumerable.Range(0, 212).Select(day => new LocalDate(year, 1, 1).PlusDays(day))
            .Select(date => (min[date] + max[date]) / 2);
        return model.ReachedAt([.. means]) + 1;
    }
}
