using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Parcels;
using WorkWindows.Engine.Weather.Quality;

namespace WorkWindows.Engine.Tests.Weather.Parcels;

public sealed class StationGroupTests
{
    private static readonly RecordStation[] Lake =
        [.. new[] { "USW00094846", "USC00111497", "USW00014839", "USC00115901" }.Select(ReferenceStations.Record)
            .Select(record => Between(record, 1995, 2014))];

    private static readonly string[] Ohio =
        ["USC00339312", "USC00336196", "USC00338822", "USC00200230", "USC00123418"];

    [Fact]
    public void Of_FindsThatMaximaOfTheGardenStandADayLate_AndLeavesTheAirportsAlone()
    {
        var shifts = StationGroup.Of(Lake)!.Shifts.ToList();

        Assert.Equal(
            Enumerable.Range(1995, 20),
            shifts.Where(shift => shift.StationId == "USC00111497").Select(shift =>
            {
                Assert.Equal((DailyElement.MaxTemperatureC, 1), (shift.Element, shift.DaysLate));
                return shift.Year;
            }).Union([1997, 1999]).Order());
        Assert.DoesNotContain(shifts, shift => shift.StationId is "USW00094846" or "USW00014839");
    }

    [Fact]
    public void Of_FindsWhatOneStationAloneCannotShow_MinimaOfWoosterADayLate()
    {
        var ohio = Ohio.Select(ReferenceStations.Record).Select(record => Between(record, 1985, 2014));

        var late = StationGroup.Of(ohio)!.Shifts
            .Where(shift => shift is { StationId: "USC00339312", Element: DailyElement.MinTemperatureC, DaysLate: 1 })
            .Select(shift => shift.Year).ToList();

        Assert.Equal([1996, 1997, 1998, 1999, 2000, 2001, 2003, 2004, 2005, 2006], late);
    }

    [Theory]
    [InlineData(DailyElement.MinTemperatureC, 1)]
    [InlineData(DailyElement.MinTemperatureC, -1)]
    [InlineData(DailyElement.MaxTemperatureC, 1)]
    [InlineData(DailyElement.MaxTemperatureC, -1)]
    public void Of_PutsAYearBack_ThatIsBookedADayEarlyOrLate(DailyElement element, int daysLate)
    {
        var right = Lake[0].Record.Usable;
        var wrong = Lake[0] with { Record = new(Moved(right, element, 2006, daysLate), []) };

        var group = StationGroup.Of([wrong, .. Lake[1..]])!;

        Assert.Contains(new DayShift("USW00094846", element, 2006, daysLate), group.Shifts);
        var values = group.Values(element, group.Stations.IndexOf(Lake[0].Station));
        // At the ends of the year a day is lost.
        Assert.All(
            Enumerable.Range(3, 355).Select(day => new LocalDate(2006, 1, 1).PlusDays(day)),
            day => Assert.Equal(right[element]![day], values[group.Days.IndexOf(day)], 0.06));
    }

    [Fact]
    public void Of_LeavesTwoStationsAsTheyAre_WhichOnlyTellThatTheyDiffer()
    {
        var wrong = Lake[0] with
        {
            Record = new(Moved(Lake[0].Record.Usable, DailyElement.MinTemperatureC, 2006, 1), []),
        };

        Assert.DoesNotContain(
            StationGroup.Of([wrong, Lake[2]])!.Shifts, shift => shift.Element == DailyElement.MinTemperatureC);
    }

    [Fact]
    public void Of_RejectsWhatNoStationAroundHasAnythingLike()
    {
        var column = Lake[0].Record.Usable[DailyElement.MinTemperatureC]!;
        var day = new LocalDate(2008, 7, 10);
        var values = column.Values.SetItem(Period.DaysBetween(column.First, day), 2);
        var wrong = Lake[0] with
        {
            Record = new(Lake[0].Record.Usable.With(DailyElement.MinTemperatureC, column with { Values = values }), []),
        };

        var rejected = StationGroup.Of([wrong, .. Lake[1..]])!.Rejected.Select(said => (said.StationId, said.Reading));

        Assert.Contains(("USW00094846", new RejectedReading(
            day, DailyElement.MinTemperatureC, AsRead.Restore(DailyElement.MinTemperatureC, 2),
            RejectionReason.UnlikeNeighbours)), rejected);
    }

    [Fact]
    public void Of_RejectsHardlyAnything_OfSixteenStations() =>
        Assert.InRange(StationGroup.Of(ReferenceStations.All)!.Rejected.Count(), 1, 40);

    [Fact]
    public void Of_IsNothing_WithoutTemperatures() => Assert.Null(
        StationGroup.Of([new(ReferenceStations.OHare, new(DailySeries.Empty, []))]));

    private static RecordStation Between(RecordStation record, int firstYear, int lastYear) => record with
    {
        Record = QualityControl.Check(
            [.. ReferenceStations.Of(record.Station)
                .Where(reading => reading.Date.Year >= firstYear && reading.Date.Year <= lastYear)],
            readsUsUnits: true),
    };

    private static DailySeries Moved(DailySeries series, DailyElement element, int year, int daysLate)
    {
        var column = series[element]!;
        var values = column.Values.ToBuilder();
        var days = Enumerable.Range(0, values.Count).Where(day => column.First.PlusDays(day).Year == year).ToList();
        days.ForEach(day => values[day] = column.Values[day - daysLate]);
        return series.With(element, column with { Values = values.ToImmutable() });
    }
}
