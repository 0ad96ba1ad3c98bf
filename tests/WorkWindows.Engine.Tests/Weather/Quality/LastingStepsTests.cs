using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Parcels;
using WorkWindows.Engine.Weather.Quality;

namespace WorkWindows.Engine.Tests.Weather.Quality;

/// <summary>Lasting steps of real stations, as they are and with known ones put in.</summary>
public sealed class LastingStepsTests
{
    private const DailyElement Min = DailyElement.MinTemperatureC, Max = DailyElement.MaxTemperatureC;

    private static readonly StationGroup Group = StationGroup.Of(ReferenceStations.All)!;

    private static readonly LocalDate[] Dates = [new(1993, 5, 1), new(2000, 1, 1), new(2007, 9, 1)];

    // Sixteen stations, three dates, up and down: 96 steps, 6 of them at a station with one other within 250 km, where
    // none can be found. The table of docs/rules/weather-quality.md.
    [Theory]
    [InlineData(Min, 1, 35, 4)]
    [InlineData(Min, 2, 69, 1)]
    [InlineData(Min, 3, 80, 1)]
    [InlineData(Max, 1, 44, 1)]
    [InlineData(Max, 2, 80, 0)]
    [InlineData(Max, 3, 86, 0)]
    public void Find_FindsStepsThatArePutIn_AndHardlyBlamesOthers(
        DailyElement element, double sizeC, int expectedFound, int expectedBlamed)
    {
        var right = Values(element);
        var before = Find(right);
        var (found, blamed, offC) = (0, 0, new List<double>());
        foreach (var date in Dates)
        {
            for (var station = 0; station < right.Length; station++)
            {
                foreach (var put in new[] { sizeC, -sizeC })
                {
                    var near = Find(With(right, station, date, put))
                        .Where(step => Math.Abs(step.Month - MonthOf(date)) <= 12).ToList();
                    var own = near.Where(step => step.Station == station && step.SizeC > 0 == put > 0).ToList();
                    found += own.Count > 0 ? 1 : 0;
                    offC.AddRange(own.Take(1).Select(step => Math.Abs(step.SizeC - put)));
                    blamed += near.Count(step => step.Station != station && !before.Any(known =>
                        known.Station == step.Station && Math.Abs(known.Month - step.Month) <= 24));
                }
            }
        }
        Assert.Equal((expectedFound, expectedBlamed), (found, blamed));
        Assert.InRange(offC.Average(), 0, 0.4);
    }

    // As the stations are; nothing says whether they were moved then.
    [Fact]
    public void Of_TellsFiveStepsOfSixteenStations() => Assert.Equal(
        [
            ("USC00111280", Min, new(1996, 9, 1), -1.2),
            ("USC00115901", Min, new(1996, 11, 1), 1.7),
            ("USC00129557", Min, new(1987, 1, 1), 1.6),
            ("USC00138688", Min, new(1999, 3, 1), -2.0),
            ("USC00129557", Max, new LocalDate(2008, 4, 1), -0.9),
        ],
        Group.Steps.Select(step => (step.StationId, step.Element, step.From, Math.Round(step.SizeC, 1))));

    [Fact]
    public void Of_KeepsTheValuesOfAStationThatWasMoved()
    {
        string[] lake = ["USW00094846", "USC00111497", "USW00014839", "USC00115901"];
        var stations = lake.Select(ReferenceStations.Record).ToArray();
        var column = stations[0].Record.Usable[Min]!;
        var moved = column with
        {
            Values = [.. column.Values.Select((value, day) =>
                column.First.PlusDays(day) >= new LocalDate(2003, 6, 1) ? value + 2 : value)],
        };
        stations[0] = stations[0] with { Record = new(stations[0].Record.Usable.With(Min, moved), []) };

        var group = StationGroup.Of(stations)!;

        var step = group.Steps.Single(step => step.StationId == lake[0] && step.Element == Min);
        Assert.InRange(Period.Between(new(2003, 6, 1), step.From, PeriodUnits.Months).Months, -3, 3);
        Assert.Equal(2, step.SizeC, 0.4);
        Assert.DoesNotContain(group.Rejected, reading => reading.StationId == lake[0] && reading.Reading.Element == Min
            && reading.Reading.Date.Year == 2003);
    }

    // Two stations only tell that they differ.
    [Fact]
    public void Find_FindsNothing_OfTwoStations() => Assert.Empty(LastingSteps.Find(
        With(Values(Min)[^2..], 0, new(2000, 1, 1), 5), (_, _) => 1000, Group.Months));

    private static double[][] Values(DailyElement element) =>
        [.. Enumerable.Range(0, Group.Stations.Length).Select(station => Group.Values(element, station))];

    private static double[][] With(double[][] values, int station, LocalDate from, double warmerC)
    {
        var changed = (double[][])values.Clone();
        var first = Group.Days.IndexOf(from);
        changed[station] = [.. values[station].Select((value, day) => day >= first ? value + warmerC : value)];
        return changed;
    }

    private static int MonthOf(LocalDate date) =>
        (date.Year - Group.Days.First.Year) * 12 + date.Month - Group.Days.First.Month;

    private static List<(int Station, int Month, double SizeC)> Find(double[][] values) => [.. LastingSteps.Find(
        values, (one, other) => RecordPlace.Of(Group.Stations[one]).DistanceM(Group.Stations[other]), Group.Months)];
}
