using CsCheck;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Tests.Weather;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Phenology;

/// <summary>
/// At a mean of 6 °C a day brings 2 degree-days above 4 °C, so that the 116 of sugar maple take 58 days from 22 March:
/// to 18 May.
/// </summary>
public sealed class LeafOutTests
{
    private const double SpringC = 6;

    [Fact]
    public void Predict_FindsEachYear_WhenTheRecordIsWhole() => Assert.Equal(
        "2018-05-18 Observed, 2019-05-18 Observed, 2020-05-18 Observed",
        Text(LeafOut.Predict(2018, 2020, Series(SteadyRecord.OfYears(2011, 2020, SpringC)))));

    [Theory]
    [InlineData(2009)]
    [InlineData(2026)]
    public void Predict_HasNoEvent_InAYearOutsideTheForecast_WhenNothingWasObserved(int year) =>
        Assert.Empty(LeafOut.Predict(year, year, DailySeries.Empty, Series(SteadyRecord.OfYears(2010, 2025, SpringC))));

    [Theory]
    [InlineData(10, "2015-05-18 Observed")] // filled with the heat of other years, not with none
    [InlineData(11, "")]
    public void Predict_FillsAGap_UpToTenDays(int days, string leafOut)
    {
        var gap = new DaySpan(new(2015, 4, 10), days);
        var record = SteadyRecord.OfYears(2010, 2020, SpringC).Where(reading => !gap.Contains(reading.Date));

        Assert.Equal(leafOut, Text(LeafOut.Predict(2015, 2015, Series(record))));
    }

    [Fact]
    public void Predict_CountsADayWithoutMaximumAsMissing()
    {
        var gap = new DaySpan(new(2015, 4, 10), 11);
        var record = SteadyRecord.OfYears(2010, 2020, SpringC)
            .Where(reading => reading.Element != DailyElement.MaxTemperatureC || !gap.Contains(reading.Date));

        Assert.Empty(LeafOut.Predict(2015, 2015, Series(record)));
    }

    [Fact]
    public void Predict_HasNoEventInTenMissingYears()
    {
        var record = SteadyRecord.OfYears(2000, 2002, SpringC).Concat(SteadyRecord.OfYears(2013, 2015, SpringC));

        Assert.Equal("2002-05-18 Observed, 2013-05-18 Observed", Text(LeafOut.Predict(2002, 2013, Series(record))));
    }

    [Theory]
    [InlineData(2010, "2020-05-18 Climatology 10")]
    [InlineData(2015, "2020-05-18 Climatology 5")]
    [InlineData(2016, "")] // four springs are too few to go by
    public void Predict_GoesOnWithPastYears_WhereTheRecordEnds(int firstYear, string leafOut)
    {
        var record = SteadyRecord.Of(DaySpan.Between(new(firstYear, 1, 1), new(2020, 5, 1)), _ => SpringC);

        Assert.Equal(leafOut, Text(LeafOut.Predict(2020, 2020, Series(record))));
    }

    [Fact]
    public void Predict_RestsOnTheForecast_WhereItReachesFarEnough()
    {
        // 82 degree-days by 1 May, then 10 a day: 116 on the fourth day.
        var record = SteadyRecord.Of(DaySpan.Between(new(2010, 1, 1), new(2020, 5, 1)), _ => SpringC);
        var forecast = SteadyRecord.Of(new(new(2020, 5, 1), 8), _ => 14);

        Assert.Equal("2020-05-05 Forecast", Text(LeafOut.Predict(2020, 2020, Series(record), Series(forecast))));
    }

    [Fact]
    public void Predict_RestsOnPastYears_WhenTheForecastComesLongAfterTheLastReading()
    {
        var record = SteadyRecord.Of(DaySpan.Between(new(2010, 1, 1), new(2020, 4, 30)), _ => SpringC);
        var forecast = SteadyRecord.Of(new(new(2020, 5, 15), 7), _ => SpringC);

        Assert.Equal(
            "2020-05-18 Climatology 10", Text(LeafOut.Predict(2020, 2020, Series(record), Series(forecast))));
    }

    [Fact]
    public void Predict_FillsFebruary29_WhenTheModelCountsFromJanuary()
    {
        var record = SteadyRecord.OfYears(2010, 2020, SpringC)
            .Where(reading => reading.Date != new LocalDate(2020, 2, 29));

        // The heat of 70 days from 1 January, of which the 60th is missing.
        var early = new ThermalTime(new AnnualDate(1, 1), 0, 70 * SpringC);
        Assert.Equal(
            "2020-03-10 Observed",
            Text(LeafOut.Predict(2020, 2020, Series(record), species: new("early", early, early, early))));
    }

    [Fact]
    public void Predict_HasNoEvent_WithoutRecordOrHeat()
    {
        Assert.Empty(LeafOut.Predict(2020, 2020, DailySeries.Empty));
        Assert.Empty(LeafOut.Predict(2020, 2020, Series(SteadyRecord.OfYears(2010, 2020, 4))));
    }

    [Theory]
    // From March the model says 18 May of every year, which is also the mean of the years; from January it says 10
    // April and has no weight. Computed: a spring 10 days late counts 36 in 61 parts from March and 36 in 85 for the
    // mean, weighted as 65 to 35.
    [InlineData("", "2019-05-18", "2019-05-08", "2019-05-28")]
    [InlineData("2018-05-28", "2019-05-23", "2019-05-14", "2019-06-02")]
    [InlineData("2015-05-28 2016-05-27 2017-05-28 2018-05-28", "2019-05-26", "2019-05-20", "2019-06-02")]
    [InlineData("2018-06-17", "2019-05-18", "2019-05-08", "2019-05-28")] // 30 days: a mistake of a month
    [InlineData("2019-05-28", "2019-05-18", "2019-05-08", "2019-05-28")] // the year's own spring predicts nothing
    [InlineData("1990-05-28", "2019-05-18", "2019-05-08", "2019-05-28")] // no temperatures to compare it with
    public void Predict_IsDrawnToSpringsSeen(string seen, string date, string earliest, string latest)
    {
        var days = seen.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(day => LocalDatePattern.Iso.Parse(day).Value);

        var leafOut = LeafOut.Predict(2019, 2019, Series(SteadyRecord.OfYears(2011, 2020, SpringC)), seen: days)[0];

        Assert.Equal(
            (date, earliest, latest), ($"{leafOut.Date:R}", $"{leafOut.Earliest:R}", $"{leafOut.Latest:R}"));
    }

    [Fact]
    public void Predict_HasAWiderInterval_WhileTheSpringIsToCome()
    {
        // Springs of 5 to 8 °C in turn, so that the weather to come may bring either.
        static double MeanC(LocalDate date) => 5 + date.Year % 4;
        var whole = SteadyRecord.Of(DaySpan.Between(new(2000, 1, 1), new(2020, 12, 31)), MeanC);
        var toMarch = SteadyRecord.Of(DaySpan.Between(new(2000, 1, 1), new(2020, 3, 31)), MeanC);

        Assert.Equal(20, WidthDays(LeafOut.Predict(2019, 2019, Series(whole))[0]));
        Assert.Equal(82, WidthDays(LeafOut.Predict(2020, 2020, Series(toMarch))[0]));
    }

    [Fact]
    public void Predict_RefusesTwoSpringsOfAYear() => Assert.Throws<ArgumentException>(() => LeafOut.Predict(
        2019, 2019, Series(SteadyRecord.OfYears(2011, 2020, SpringC)), seen: [new(2018, 5, 1), new(2018, 5, 2)]));

    [Fact]
    public void Predict_LiesBetweenTheModelAndTheSprings_WhenTheyAreAllAsLate() =>
        Gen.Select(Gen.Int[-29, 29], Gen.Int[1, 8]).Sample((lateDays, springs) =>
        {
            var record = Series(SteadyRecord.OfYears(2011, 2020, SpringC));
            var seen = LeafOut.Predict(2011, 2010 + springs, record).Select(e => e.Date.PlusDays(lateDays));
            var shift = Period.DaysBetween(new(2019, 5, 18), LeafOut.Predict(2019, 2019, record, seen: seen)[0].Date);
            // The model from January says 38 days earlier, so that early springs lend it weight.
            return lateDays < 0 ? shift is <= 0 and > -39 : shift >= 0 && shift <= lateDays;
        });

    [Fact]
    public void Predict_IsNeverLater_WhenEveryDayIsWarmer() =>
        Gen.Select(Gen.Double[-10, 20].Array[30, 90], Gen.Double[0, 10]).Sample((meansC, warmerC) =>
        {
            var usual = LeafOut.Predict(2020, 2020, Weather(2010, meansC, 0));
            var warm = LeafOut.Predict(2020, 2020, Weather(2010, meansC, warmerC));
            return usual is [] || warm[0].Date <= usual[0].Date;
        });

    [Fact]
    public void Predict_ShiftsWithTheRecord_ByACycleOfLeapYears() =>
        Gen.Double[-10, 20].Array[30, 90].Sample(meansC =>
        {
            var now = LeafOut.Predict(2011, 2021, Weather(2010, meansC, 0));
            var later = LeafOut.Predict(2039, 2049, Weather(2038, meansC, 0));
            return now.Select(e => e with
            {
                Date = e.Date.PlusYears(28),
                Earliest = e.Earliest?.PlusYears(28),
                Latest = e.Latest?.PlusYears(28),
            }).SequenceEqual(later);
        });

    // Ten years and a spring, so that the last event may lie after the record.
    private static DailySeries Weather(int firstYear, double[] meansC, double warmerC)
    {
        var span = DaySpan.Between(new(firstYear, 1, 1), new(firstYear + 10, 4, 30));
        return Series(SteadyRecord.Of(span, date => meansC[span.IndexOf(date) % meansC.Length] + warmerC));
    }

    private static int WidthDays(SeasonEvent leafOut) =>
        Period.DaysBetween(leafOut.Earliest!.Value, leafOut.Latest!.Value);

    private static DailySeries Series(IEnumerable<DailyReading> readings) => DailySeries.Of(readings);

    private static string Text(IEnumerable<SeasonEvent> events) => string.Join(", ", events.Select(
        e => e.Years > 0 ? $"{e.Date:R} {e.Basis} {e.Years}" : $"{e.Date:R} {e.Basis}"));
}
