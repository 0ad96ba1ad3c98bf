using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Parcels;
using WorkWindows.Engine.Weather.Quality;

namespace WorkWindows.Engine.Tests.Weather.Parcels;

public sealed class CrossValidationTests
{
    private static readonly DistanceBand[] Bands =
        [new(0, 50_000), new(50_000, 100_000), new(100_000, 150_000), new(150_000, 200_000), new(200_000, 300_000)];

    private static readonly IReadOnlyList<CrossValidationRow> Rows =
        CrossValidation.Of(ReferenceStations.All, DaySpan.Between(new(1985, 1, 1), new(2014, 12, 31)), Bands);

    // Mean absolute and root mean square error of the blend, and mean absolute error of the nearest station alone, °C;
    // the table of docs/rules/parcel-record.md.
    [Theory]
    [InlineData(DailyElement.MinTemperatureC, 0, 2, 1.85, 2.63, 1.85)]
    [InlineData(DailyElement.MinTemperatureC, 1, 6, 1.89, 2.65, 2.02)]
    [InlineData(DailyElement.MinTemperatureC, 2, 6, 1.71, 2.37, 1.98)]
    [InlineData(DailyElement.MinTemperatureC, 3, 13, 2.00, 2.72, 2.55)]
    [InlineData(DailyElement.MinTemperatureC, 4, 15, 2.15, 2.85, 2.65)]
    [InlineData(DailyElement.MaxTemperatureC, 0, 2, 1.27, 1.84, 1.27)]
    [InlineData(DailyElement.MaxTemperatureC, 1, 6, 1.78, 2.53, 1.93)]
    [InlineData(DailyElement.MaxTemperatureC, 2, 6, 1.69, 2.39, 2.08)]
    [InlineData(DailyElement.MaxTemperatureC, 3, 13, 1.88, 2.63, 2.25)]
    [InlineData(DailyElement.MaxTemperatureC, 4, 15, 2.19, 3.01, 2.64)]
    public void Of_TellsTheErrorByDistance(
        DailyElement element, int band, int stations, double blendMaeC, double blendRmseC, double nearestMaeC)
    {
        var row = Rows.Single(row => row.Element == element && row.Band == Bands[band]);

        Assert.Equal(stations, row.Stations);
        Assert.Equal(blendMaeC, row.Blend.MaeC, 0.006);
        Assert.Equal(blendRmseC, row.Blend.RmseC, 0.006);
        Assert.Equal(nearestMaeC, row.Nearest.MaeC, 0.006);
    }

    // Three stations of the same weather, 8 km apart; one reads 20 °C too much on one day, which the others contradict.
    [Fact]
    public void Of_ScoresAgainstWhatWasRead_AlsoWhereTheOthersContradictIt()
    {
        var days = DaySpan.Between(new(2001, 1, 1), new(2002, 12, 31));
        var stations = Enumerable.Range(0, 3).Select(i => new RecordStation(
            new($"S{i}", $"S{i}", 45, -90 + i * 0.1, 300),
            new(
                DailySeries.Of(SteadyRecord.Of(days, date =>
                    8 - 12 * Math.Cos(2 * Math.PI * date.DayOfYear / 365.25)
                    + (i == 1 && date == new LocalDate(2002, 5, 10) ? 20 : 0))),
                [])));

        var row = CrossValidation.Of(stations, days, Bands).Single(row => row.Element == DailyElement.MinTemperatureC);

        Assert.Equal(3 * days.Count, row.Blend.Days);
        Assert.Equal(Math.Sqrt(20 * 20 / (3.0 * days.Count)), row.Blend.RmseC, 1e-6);
    }

    [Fact]
    public void Of_HasNoRow_WhereNoStationCanBeHeldOut()
    {
        Assert.Empty(CrossValidation.Of(
            [ReferenceStations.Record("USW00094846")], DaySpan.Between(new(1985, 1, 1), new(2014, 12, 31)), Bands));
        Assert.Empty(CrossValidation.Of([], new DaySpan(new(1985, 1, 1), 1), Bands));
    }
}
