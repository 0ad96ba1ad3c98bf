using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Weather;

public sealed class StationChoiceTests
{
    private static readonly StationCandidate Near = Station("B", 43.05, 0.89);
    private static readonly StationCandidate Usable = Station("C", 43.10, 0.90);
    private static readonly StationCandidate Far = Station("D", 43.60, 1);

    [Fact]
    public void Nearest_PassesOverAStationWithAPoorRecord()
    {
        var match = StationChoice.Nearest([Far, Near, Usable], 43, -89, elevationM: 250)!;

        Assert.Equal("C", match.Station.Id);
        Assert.Equal(11_119.5, match.DistanceM, 0.1);
        Assert.Equal(50, match.ElevationDifferenceM);
    }

    [Fact]
    public void Nearest_TakesTheSmallerIdentifier_WhenTwoAreEquallyNear() => Assert.Equal(
        "A", StationChoice.Nearest([Usable, Station("A", 43.10, 1)], 43, -89, null)!.Station.Id);

    [Theory]
    [InlineData(0.9, 11_119, null)]
    [InlineData(0.9, 11_120, "C")]
    [InlineData(0.91, 11_120, null)]
    [InlineData(0.5, 11_120, "B")]
    public void Nearest_KeepsToItsLimits(double minCoverage, double maxDistanceM, string? id) => Assert.Equal(
        id, StationChoice.Nearest([Far, Near, Usable], 43, -89, null, minCoverage, maxDistanceM)?.Station.Id);

    [Fact]
    public void Nearest_IsNone_WhenThereIsNoStationWithin100Km()
    {
        Assert.Null(StationChoice.Nearest([], 43, -89, null));
        Assert.Null(StationChoice.Nearest([Station("E", 43.9, 1)], 43, -89, null));
    }

    [Fact]
    public void Nearest_HasNoElevationDifference_WhenTheElevationIsNotKnown() =>
        Assert.Null(StationChoice.Nearest([Usable], 43, -89, null)!.ElevationDifferenceM);

    [Theory]
    [InlineData(0, 0, 0, 180, 20_015_114.4)] // half around the equator: pi times the radius
    [InlineData(90, 0, -90, 50, 20_015_114.4)]
    [InlineData(43, -89, 43, -89, 0)]
    [InlineData(0, 179.5, 0, -179.5, 111_195)] // over the date line
    public void DistanceM_IsAlongTheGreatCircle(double lat1, double lon1, double lat2, double lon2, double distanceM) =>
        Assert.Equal(distanceM, StationChoice.DistanceM(lat1, lon1, lat2, lon2), 0.5);

    [Fact]
    public void Coverage_CountsDaysWithMinimumAndMaximum()
    {
        var year = DaySpan.Between(new(2025, 1, 1), new(2025, 12, 31));
        var record = SteadyRecord.Of(year, _ => 5).Where(reading =>
            reading.Element == DailyElement.MinTemperatureC || reading.Date >= new LocalDate(2025, 3, 15));
        var series = DailySeries.Of(record);

        Assert.Equal(292 / 365.0, StationChoice.Coverage(series, new(2025, 12, 31), 1), 1e-12);
        Assert.Equal(292 / 731.0, StationChoice.Coverage(series, new(2025, 12, 31), 2), 1e-12);
        Assert.Equal(0, StationChoice.Coverage(series, new(2027, 12, 31), 1));
        Assert.Equal(0, StationChoice.Coverage(DailySeries.Empty, new(2025, 12, 31), 1));
    }

    [Fact]
    public void Coverage_CountsDaysWithEveryElementAskedFor()
    {
        var last = new LocalDate(2025, 12, 31);
        var year = DaySpan.Between(new(2025, 1, 1), last);
        var winds = Enumerable.Range(0, year.Count).Select(
            day => new DailyReading(year[day], DailyElement.WindMps, 4, null));
        var gusts = Enumerable.Range(0, 73).Select(day => new DailyReading(year[day], DailyElement.GustMps, 7, null));
        var series = DailySeries.Of([.. winds, .. gusts]);

        Assert.Equal(1, StationChoice.Coverage(series, last, 1, DailyElement.WindMps));
        Assert.Equal(
            73 / 365.0, StationChoice.Coverage(series, last, 1, DailyElement.WindMps, DailyElement.GustMps), 1e-12);
        Assert.Equal(0, StationChoice.Coverage(series, last, 1, DailyElement.WindMps, DailyElement.MinTemperatureC));
    }

    private static StationCandidate Station(string id, double latitudeDeg, double coverage) =>
        new(new(id, $"Station {id}", latitudeDeg, -89, 300), coverage);
}
