using WorkWindows.Engine.Days;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Parcels;

namespace WorkWindows.Engine.Tests.Weather.Parcels;

public sealed class CrossValidationTests
{
    private static readonly DistanceBand[] Bands =
        [new(0, 50_000), new(50_000, 100_000), new(100_000, 150_000), new(150_000, 200_000), new(200_000, 300_000)];

    private static readonly IReadOnlyList<CrossValidationRow> Rows =
        CrossValidation.Of(ReferenceStations.All, DaySpan.Between(new(1985, 1, 1), new(2014, 12, 31)), Bands);

    // Mean absolute error of the blend and of the nearest station alone, °C; the table of docs/rules/parcel-record.md.
    [Theory]
    [InlineData(DailyElement.MinTemperatureC, 0, 2, 1.85, 1.85)]
    [InlineData(DailyElement.MinTemperatureC, 1, 6, 1.88, 2.01)]
    [InlineData(DailyElement.MinTemperatureC, 2, 6, 1.71, 1.98)]
    [InlineData(DailyElement.MinTemperatureC, 3, 13, 2.00, 2.55)]
    [InlineData(DailyElement.MinTemperatureC, 4, 15, 2.14, 2.65)]
    [InlineData(DailyElement.MaxTemperatureC, 0, 2, 1.27, 1.27)]
    [InlineData(DailyElement.MaxTemperatureC, 1, 6, 1.78, 1.93)]
    [InlineData(DailyElement.MaxTemperatureC, 2, 6, 1.68, 2.08)]
    [InlineData(DailyElement.MaxTemperatureC, 3, 13, 1.88, 2.25)]
    [InlineData(DailyElement.MaxTemperatureC, 4, 15, 2.19, 2.64)]
    public void Of_TellsTheErrorByDistance(
        DailyElement element, int band, int stations, double blendMaeC, double nearestMaeC)
    {
        var row = Rows.Single(row => row.Element == element && row.Band == Bands[band]);

        Assert.Equal(stations, row.Stations);
        Assert.Equal(blendMaeC, row.Blend.MaeC, 0.01);
        Assert.Equal(nearestMaeC, row.Nearest.MaeC, 0.01);
    }

    [Fact]
    public void Of_HasNoRow_WhereNoStationCanBeHeldOut()
    {
        Assert.Empty(CrossValidation.Of(
            [ReferenceStations.Record("USW00094846")], DaySpan.Between(new(1985, 1, 1), new(2014, 12, 31)), Bands));
        Assert.Empty(CrossValidation.Of([], new DaySpan(new(1985, 1, 1), 1), Bands));
    }
}
