using NodaTime;
using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Phenology;

public class SpringEventsTests
{
    private const double Latitude = 42;

    // Computed from the published steps (C): constant 60/40 °F at 42° N gives leaf on day 30 and bloom on day 63.
    [Fact]
    public void Of_FindsFirstLeafAndBloom_ThroughObservedAndForecastDays()
    {
        var observed = Days(new(2026, 1, 1), 40, 60, 40);
        var forecast = Days(new(2026, 2, 10), 30, 60, 40);

        var events = SpringEvents.Of(2026, 2026, observed, forecast, Latitude).ToArray();

        Assert.Equal(
            [
                new SeasonEvent(SeasonEventKind.FirstLeaf, new(2026, 1, 30), Basis.Observed),
                new SeasonEvent(SeasonEventKind.FirstBloom, new(2026, 3, 4), Basis.Forecast),
            ],
            events);
    }

    [Fact]
    public void Of_TellsNoLeaf_BehindAGap()
    {
        var observed = Merge(Days(new(2026, 1, 1), 10, 60, 40), Days(new(2026, 1, 12), 60, 60, 40));

        Assert.Empty(SpringEvents.Of(2026, 2026, observed, null, Latitude));
    }

    [Fact]
    public void Of_ObservesTheLastFrost_OfASpringThatIsOver() => Assert.Equal(
        new SeasonEvent(SeasonEventKind.LastSpringFrost, new(2020, 4, 20), Basis.Observed),
        SpringEvents.Of(2020, 2020, Springs(2015, 2025, _ => 20), null, Latitude)
            .Single(e => e.Kind == SeasonEventKind.LastSpringFrost));

    // Eleven springs whose last frosts fall on 10 to 20 April: the sixth is the middle one, days 10 and 20 of April the
    // quantiles of type 8 at 0.1 (position 1.467) and 0.9 (10.533), rounded.
    [Fact]
    public void Of_ExpectsTheLastFrostOfAYearToCome_FromThePast()
    {
        var record = Springs(2015, 2025, year => year - 2005);

        var expected = SpringEvents.Of(2026, 2026, record, null, Latitude)
            .Single(e => e.Kind == SeasonEventKind.LastSpringFrost);

        Assert.Equal(
            (new LocalDate(2026, 4, 15), Basis.Climatology, 11), (expected.Date, expected.Basis, expected.Years));
        Assert.InRange(expected.Earliest!.Value, new LocalDate(2026, 4, 10), new LocalDate(2026, 4, 11));
        Assert.InRange(expected.Latest!.Value, new LocalDate(2026, 4, 19), new LocalDate(2026, 4, 20));
    }

    [Fact]
    public void Of_ExpectsTheLastFrostNoEarlier_ThanOneOfThisSpring()
    {
        var record = Merge(Springs(2015, 2025, _ => 10), DailySeries.Of(
            [new(new(2026, 5, 15), DailyElement.MinTemperatureC, -3, null)]));

        var expected = SpringEvents.Of(2026, 2026, record, null, Latitude)
            .Single(e => e.Kind == SeasonEventKind.LastSpringFrost);

        Assert.Equal((new LocalDate(2026, 5, 15), new LocalDate(2026, 5, 15)), (expected.Date, expected.Latest!.Value));
    }

    [Fact]
    public void Of_DoesNotGuessTheLastFrost_FromFewYears() =>
        Assert.Empty(SpringEvents.Of(2026, 2026, Springs(2017, 2025, _ => 20), null, Latitude));

    /// <summary>Mild springs, each with one frost of exactly 28 °F, on the given day of April.</summary>
    private static DailySeries Springs(int first, int last, Func<int, int> april)
    {
        var readings = new List<DailyReading>();
        for (var date = new LocalDate(first, 1, 1); date <= new LocalDate(last, 12, 31); date = date.PlusDays(1))
        {
            var isFrost = date.Month == 4 && date.Day == april(date.Year);
            readings.Add(new(date, DailyElement.MinTemperatureC, isFrost ? -2.2 : 4.4, null));
        }
        return DailySeries.Of(readings, readsUsUnits: true);
    }

    private static DailySeries Days(LocalDate first, int count, double maxF, double minF) => DailySeries.Of(
        Enumerable.Range(0, count).SelectMany(day => new DailyReading[]
        {
            new(first.PlusDays(day), DailyElement.MaxTemperatureC, (maxF - 32) / 1.8, null),
            new(first.PlusDays(day), DailyElement.MinTemperatureC, (minF - 32) / 1.8, null),
        }));

    private static DailySeries Merge(params DailySeries[] parts) => DailySeries.Of(
        from part in parts
        from element in new[] { DailyElement.MaxTemperatureC, DailyElement.MinTemperatureC }
        let column = part[element]
        where column is not null
        from day in Enumerable.Range(0, column.Values.Length)
        where !double.IsNaN(column.Values[day])
        select new DailyReading(column.First.PlusDays(day), element, column.Values[day], null),
        readsUsUnits: true);
}
