using NodaTime;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Parcels;
using WorkWindows.Engine.Weather.Quality;

namespace WorkWindows.Engine.Tests.Weather.Parcels;

public sealed class ParcelRecordTests
{
    private const DailyElement Min = DailyElement.MinTemperatureC, Max = DailyElement.MaxTemperatureC;

    private static readonly DaySpan Days = DaySpan.Between(new(2001, 1, 1), new(2002, 12, 31));
    private static readonly LocalDate Gap = new(2002, 5, 10);

    private static readonly string[] Lake = ["USW00094846", "USC00111497", "USW00014839"];

    // Three stations in a row from west to east, about 8.2 km apart.
    private static readonly WeatherStation West = new("A", "West", 45, -90.1, 300);
    private static readonly WeatherStation Middle = new("B", "Middle", 45, -90, 300);
    private static readonly WeatherStation East = new("C", "East", 45, -89.9, 300);

    [Fact]
    public void Of_IsAStationsOwnRecordUnchanged_WhenItIsTheOnlyOne()
    {
        var alone = Station(West, _ => 0, readsUsUnits: true);

        var record = ParcelRecord.Of(StationGroup.Of([alone])!, "A", At(-90));

        Assert.Same(alone.Record.Usable, record.Series);
        Assert.Null(record.FillingError(Min));
        Assert.Equal([(West, 1)], Weights(record, Min, Gap));
    }

    [Fact]
    public void Of_IsTheMeanOfTwoStations_HalfWayBetweenThem()
    {
        var record = Record([Station(West, _ => 0), Station(East, _ => 4)], "A", At(-90));

        Assert.Equal(Mean(Gap) + 2 - 5, record.Series[Min]![Gap], 1e-9);
        Assert.Equal(Mean(Gap) + 2 + 5, record.Series[Max]![Gap], 1e-9);
        Assert.Equal([0.5, 0.5], Weights(record, Min, Gap).Select(pair => pair.Weight));
        Assert.False(record.Series[Min]!.IsOwn(Gap));
    }

    [Fact]
    public void Of_WeighsByTheSquareOfTheDistance()
    {
        var record = Record([Station(West, _ => 0), Station(East, _ => 5)], "A", At(-90 - 0.1 / 3));

        Assert.Equal([0.8, 0.2], record.Stations.Select(station => Math.Round(station.Share, 4)));
        Assert.Equal(Mean(Gap) + 1 - 5, record.Series[Min]![Gap], 1e-4);
    }

    // 6.5 °C per km for maxima and half of it for minima, from 300 m to 400 m.
    [Theory]
    [InlineData(400, -0.325, -0.65)]
    [InlineData(300, 0, 0)]
    [InlineData(null, 0, 0)]
    public void Of_CoolsWithHeight(int? elevationM, double minC, double maxC)
    {
        var record = Record(
            [Station(West, _ => 0), Station(East, _ => 0)], "A", At(-90) with { ElevationM = elevationM });

        Assert.Equal(Mean(Gap) - 5 + minC, record.Series[Min]![Gap], 1e-9);
        Assert.Equal(Mean(Gap) + 5 + maxC, record.Series[Max]![Gap], 1e-9);
    }

    [Fact]
    public void Of_TakesANearStationAsItWasRead_AndFillsOnlyItsGaps()
    {
        var record = Record(
            [Station(Middle, _ => 0, Gap), Station(East, _ => 4)], "B", At(-90) with { ElevationM = 500 });

        Assert.Equal([1, 0], record.Stations.Select(station => station.Share));
        var before = Gap.PlusDays(-1);
        Assert.Equal(Mean(before) - 5, record.Series[Min]![before], 1e-9);
        Assert.True(record.Series[Min]!.IsOwn(before));
        // The other station is 4 °C warmer; that is its usual difference, and taken off.
        Assert.Equal(Mean(Gap) - 5, record.Series[Min]![Gap], 1e-9);
        Assert.False(record.Series[Min]!.IsOwn(Gap));
        Assert.Equal([(East, 1)], Weights(record, Min, Gap));
        Assert.Equal(0, record.FillingError(Min)!.MaeC, 1e-9);
        Assert.Null(record.BlendingError(Min));
    }

    // The own station lies 33 km off, a neighbour 1.6 km: the neighbour is the whole mean, and nothing of it is own.
    [Fact]
    public void Of_CallsNothingItsOwn_WhereANearerStationIsTheWholeMean()
    {
        var far = new WeatherStation("F", "Far", 45, -90.42, 300);
        var near = new WeatherStation("N", "Near", 45, -90.02, 300);
        var before = Gap.PlusDays(-1);

        var record = Record([Station(far, _ => 0), Station(near, _ => 4, Gap)], "F", At(-90));

        Assert.Equal([0, 1], record.Stations.Select(station => station.Share));
        Assert.Equal(Mean(before) + 4 - 5, record.Series[Min]![before], 1e-9);
        Assert.Equal([(near, 1)], Weights(record, Min, before));
        Assert.Equal(Mean(Gap) + 4 - 5, record.Series[Min]![Gap], 1e-9);
        Assert.Equal([(far, 1)], Weights(record, Min, Gap));
        Assert.False(record.Series[Min]!.IsOwn(before));
        Assert.False(record.Series[Min]!.IsOwn(Gap));
        Assert.Equal(0, record.FillingError(Min)!.MaeC, 1e-9);
        Assert.Null(record.BlendingError(Min));
        var signals = SignalSetBuilder.Build(
            new("wood", 45, -90), DaySpan.Between(before, Gap), record.Series, null, DateTimeZone.Utc,
            WorkShift.Default, AlertReport.None);
        Assert.Equal([Basis.Interpolated, Basis.Interpolated], signals[SignalKind.MinTemperatureC]!.Bases);
        Assert.Equal([Basis.Interpolated, Basis.Interpolated], signals[SignalKind.MaxTemperatureC]!.Bases);
    }

    [Theory]
    [InlineData(-90, false, true)]
    [InlineData(-90, true, false)]      // a day is filled
    [InlineData(-89.95, false, false)]  // half way between both
    public void Of_KeepsWholeFahrenheit_WhereEveryValueIsThatOfOneStation(
        double longitudeDeg, bool hasGap, bool readsUsUnits)
    {
        var record = Record(
            [
                Station(Middle, _ => 0, hasGap ? Gap : null, readsUsUnits: true, more: day => [Rain(day, 7.6)]),
                Station(East, _ => 4),
            ],
            "B", At(longitudeDeg));

        Assert.Equal(readsUsUnits, record.Series[Min]!.ReadsUsUnits);
        Assert.Equal(readsUsUnits, record.Series[Max]!.ReadsUsUnits);
        Assert.True(record.Series[DailyElement.PrecipitationMm]!.ReadsUsUnits);
    }

    [Fact]
    public void Of_DoesNotLeap_WhenAStationOfTheMeanDropsOut()
    {
        var record = Record([Station(West, _ => 0), Station(East, _ => 4, Gap)], "A", At(-90));

        Assert.Equal(Mean(Gap) + 2 - 5, record.Series[Min]![Gap], 1e-9);
        Assert.Equal([(West, 1)], Weights(record, Min, Gap));
        Assert.False(record.Series[Min]!.IsOwn(Gap));
    }

    [Fact]
    public void Of_IsUnknown_WhereNoStationHasAValue()
    {
        var record = Record([Station(West, _ => 0, Gap), Station(East, _ => 4, Gap)], "A", At(-90));

        Assert.True(double.IsNaN(record.Series[Min]![Gap]));
        Assert.Empty(record.WeightsOf(Min, Gap));
    }

    [Fact]
    public void Of_TakesRainOfTheNearestStationThatHasTheDay_AndWindOfNoOther()
    {
        var near = Station(West, _ => 0, more: day => day == Gap ? [] : [Rain(day, 1), Gust(day, 3)]);
        var far = Station(East, _ => 0, more: day => [Rain(day, 2), Gust(day, 9)]);

        var series = Record([near, far], "A", At(-90.05)).Series;

        Assert.Equal(1, series[DailyElement.PrecipitationMm]![Gap.PlusDays(1)]);
        Assert.True(series[DailyElement.PrecipitationMm]!.IsOwn(Gap.PlusDays(1)));
        Assert.Equal(2, series[DailyElement.PrecipitationMm]![Gap]);
        Assert.False(series[DailyElement.PrecipitationMm]!.IsOwn(Gap));
        Assert.True(double.IsNaN(series[DailyElement.GustMps]![Gap]));
    }

    [Fact]
    public void Of_UsesTheNearestFiveStations()
    {
        var seven = Enumerable.Range(0, 7).Select(i => Station(
            new($"S{i}", $"S{i}", 45, -90 + i * 0.1, 300), _ => i)).ToList();

        Assert.Equal(
            ["S2", "S3", "S1", "S4", "S0"],
            Record(seven, "S2", At(-89.79)).Stations.Select(station => station.Station.Id));
    }

    // Maxima and minima of 2014 at O'Hare, without its own record: the stations tell how far off.
    [Fact]
    public void Of_StatesAnErrorThatItKeeps()
    {
        RecordStation[] stations = [.. Lake.Select(ReferenceStations.Record)
            .Select(record => record with
            {
                Record = new(Cut(record.Record.Usable, DaySpan.Between(new(1995, 1, 1), new(2014, 12, 31))), []),
            })];
        var withheld = stations[0] with
        {
            Record = new(Cut(stations[0].Record.Usable, DaySpan.Between(new(1995, 1, 1), new(2013, 12, 31))), []),
        };
        var place = RecordPlace.Of(ReferenceStations.OHare);

        var record = ParcelRecord.Of(StationGroup.Of([withheld, .. stations[1..]])!, "USW00094846", place);

        foreach (var element in new[] { Min, Max })
        {
            var errors = Enumerable.Range(0, 365).Select(day => new LocalDate(2014, 1, 1).PlusDays(day))
                .Select(day => Math.Abs(record.Series[element]![day] - stations[0].Record.Usable[element]![day]))
                .Where(error => !double.IsNaN(error)).ToList();
            Assert.InRange(errors.Count, 350, 365);
            Assert.InRange(errors.Average() / record.FillingError(element)!.MaeC, 0.8, 1.25);
        }
    }

    private static ParcelRecord Record(IReadOnlyList<RecordStation> stations, string primary, RecordPlace place) =>
        ParcelRecord.Of(StationGroup.Of(stations)!, primary, place);

    private static RecordPlace At(double longitudeDeg) => new(45, longitudeDeg, 300);

    private static IEnumerable<(WeatherStation Station, double Weight)> Weights(
        ParcelRecord record, DailyElement element, LocalDate date) =>
        record.WeightsOf(element, date).Select(weight => (weight.Station, weight.Weight));

    private static DailyReading Rain(LocalDate date, double mm) => new(date, DailyElement.PrecipitationMm, mm, null);

    private static DailyReading Gust(LocalDate date, double mps) => new(date, DailyElement.GustMps, mps, null);

    /// <summary>A season with weather on it, so that nothing repeats.</summary>
    private static double Mean(LocalDate date)
    {
        var day = Period.DaysBetween(Days.First, date);
        return 8 - 12 * Math.Cos(2 * Math.PI * day / 365.25) + 4 * Math.Sin(day * 0.37) + 2 * Math.Sin(day * 1.13);
    }

    private static RecordStation Station(
        WeatherStation station, Func<LocalDate, double> warmerC, LocalDate? gap = null, bool readsUsUnits = false,
        Func<LocalDate, DailyReading[]>? more = null)
    {
        var readings = SteadyRecord.Of(Days, date => Mean(date) + warmerC(date))
            .Where(reading => reading.Date != gap)
            .Concat(Enumerable.Range(0, more is null ? 0 : Days.Count).SelectMany(day => more!(Days[day])));
        return new(station, new(DailySeries.Of(readings, readsUsUnits), []));
    }

    private static DailySeries Cut(DailySeries series, DaySpan days)
    {
        foreach (var element in new[] { Min, Max })
        {
            var values = new double[days.Count];
            series[element]!.CopyTo(days, values);
            series = series.With(element, series[element]! with { First = days.First, Values = [.. values] });
        }
        return series;
    }
}
