using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Tests.Weather;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Phenology;

/// <summary>At a mean of 6 °C a day brings 2 degree-days above the 4 °C of the model from March.</summary>
public sealed class HeatSeasonTests
{
    private const int Days = 60;

    private static readonly ThermalTime Model = LeafOut.Default.FromMarch;

    [Fact]
    public void Of_AddsUpTheHeatOfEachYear_FromTheStartOfTheModel()
    {
        var seasons = Of(SteadyRecord.OfYears(2018, 2020, 6), null);

        Assert.Equal([2018, 2019, 2020], seasons.Select(season => season.Year));
        Assert.All(seasons, season =>
        {
            Assert.Equal((2, 120, Days), (season.SumsC[0], season.SumsC[^1], season.ObservedDays));
            // The day on which leaf-out is predicted.
            Assert.Equal(57, Enumerable.Range(0, Days).First(day => season.SumsC[day] >= Model.RequiredDegreeDaysC));
        });
    }

    [Fact]
    public void Of_GoesOnWithTheForecast_AndEndsWithIt()
    {
        var lastRead = new LocalDate(2020, 4, 1);
        var forecast = new DaySpan(lastRead.PlusDays(1), 7);

        var season = Of(
            SteadyRecord.OfYears(2010, 2020, 6).Where(reading => reading.Date <= lastRead),
            SteadyRecord.Of(forecast, _ => 9)).Last();

        Assert.Equal(11, season.ObservedDays);
        Assert.Equal((22, 57), (season.SumsC[10], season.SumsC[17]));
        Assert.True(double.IsNaN(season.SumsC[18]));
    }

    [Theory]
    [InlineData(10, 120)] // filled with the heat of other years, not with none
    [InlineData(11, double.NaN)]
    public void Of_FillsAGap_UpToTenDays(int days, double sumC)
    {
        var gap = new DaySpan(new(2015, 4, 10), days);
        var record = SteadyRecord.OfYears(2010, 2020, 6).Where(reading => !gap.Contains(reading.Date));

        Assert.Equal(sumC, Of(record, null).Single(season => season.Year == 2015).SumsC[^1]);
    }

    [Fact]
    public void Of_EndsBeforeAGap_WithFewerThanFiveOtherYears()
    {
        var gap = new DaySpan(new(2015, 4, 10), 1);
        var record = SteadyRecord.OfYears(2014, 2017, 6).Where(reading => !gap.Contains(reading.Date));

        var season = Of(record, null).Single(season => season.Year == 2015);

        Assert.Equal(38, season.SumsC[18]);
        Assert.True(double.IsNaN(season.SumsC[19]));
    }

    [Fact]
    public void Of_LeavesOutAYearWhoseSpringHasNotBegun_AndIsEmptyWithoutARecord()
    {
        var record = SteadyRecord.OfYears(2018, 2020, 6).Where(reading => reading.Date < new LocalDate(2020, 2, 3));

        Assert.Equal([2018, 2019], Of(record, null).Select(season => season.Year));
        Assert.Empty(Of([], null));
    }

    private static ImmutableArray<HeatSeason> Of(IEnumerable<DailyReading> record, IEnumerable<DailyReading>? forecast) =>
        HeatSeason.Of(DailySeries.Of(record), forecast is null ? null : DailySeries.Of(forecast), Model, Days);
}
