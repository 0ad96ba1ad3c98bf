using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Quality;

namespace WorkWindows.Engine.Tests.Weather.Quality;

public sealed class QualityControlTests
{
    private static readonly LocalDate Day = new(2012, 5, 10);

    [Fact]
    public void Check_GivesAnEmptySeries_WithoutReadings()
    {
        var result = QualityControl.Check([], readsUsUnits: true);

        Assert.Null(result.Usable[DailyElement.MinTemperatureC]);
        Assert.Empty(result.Rejected);
    }

    [Fact]
    public void Check_KeepsAFlaggedReadingApart()
    {
        var result = QualityControl.Check([Max(Day, 31) with { QualityFlag = 'I' }, Max(Day.PlusDays(1), 30)], true);

        Assert.True(double.IsNaN(result.Usable[DailyElement.MaxTemperatureC]![Day]));
        Assert.Equal(30, result.Usable[DailyElement.MaxTemperatureC]![Day.PlusDays(1)]);
        Assert.Equal([new(Day, DailyElement.MaxTemperatureC, 31, RejectionReason.SourceFlag)], result.Rejected);
    }

    [Fact]
    public void Check_TakesADayThatIsThereTwice_WhenItsValuesAgree()
    {
        var result = QualityControl.Check([Max(Day, 20), Max(Day, 20)], true);

        Assert.Equal(20, result.Usable[DailyElement.MaxTemperatureC]![Day]);
        Assert.Empty(result.Rejected);
    }

    [Fact]
    public void Check_RejectsEveryValueOfADayThatIsThereTwice_WhenTheyDiffer()
    {
        var result = QualityControl.Check([Max(Day, 20), Max(Day, 21), Max(Day, 20)], true);

        Assert.True(double.IsNaN(result.Usable[DailyElement.MaxTemperatureC]![Day]));
        Assert.Equal([20d, 20, 21], result.Rejected.Select(reading => reading.Value).Order());
        Assert.All(result.Rejected, reading => Assert.Equal(RejectionReason.Duplicate, reading.Reason));
    }

    [Theory]
    [InlineData(DailyElement.MaxTemperatureC, 56.7, true)]
    [InlineData(DailyElement.MaxTemperatureC, 56.8, false)]
    [InlineData(DailyElement.MinTemperatureC, -89.2, true)]
    [InlineData(DailyElement.MinTemperatureC, -89.3, false)]
    [InlineData(DailyElement.PrecipitationMm, 0, true)]
    [InlineData(DailyElement.PrecipitationMm, -0.1, false)]
    [InlineData(DailyElement.PrecipitationMm, 1825, true)]
    [InlineData(DailyElement.PrecipitationMm, 1826, false)]
    [InlineData(DailyElement.GustMps, 113.2, true)]
    [InlineData(DailyElement.GustMps, 113.3, false)]
    [InlineData(DailyElement.SnowDepthCm, 1182, true)]
    [InlineData(DailyElement.SnowDepthCm, 1183, false)]
    [InlineData(DailyElement.MinHumidityPercent, 100, true)]
    [InlineData(DailyElement.MinHumidityPercent, 101, false)]
    public void Check_RejectsWhatCannotBe(DailyElement element, double value, bool isUsable)
    {
        var result = QualityControl.Check([new(Day, element, value, null)], false);

        Assert.Equal(isUsable ? [] : [RejectionReason.Impossible], result.Rejected.Select(reading => reading.Reason));
    }

    [Theory]
    [InlineData(10, 10, true)]
    [InlineData(10.1, 10, false)]
    public void Check_RejectsBothExtremes_WhenTheMinimumIsAboveTheMaximum(double min, double max, bool isUsable)
    {
        var result = QualityControl.Check([Min(Day, min), Max(Day, max)], false);

        Assert.Equal(isUsable ? 0 : 2, result.Rejected.Length);
        Assert.All(result.Rejected, reading => Assert.Equal(RejectionReason.MinimumAboveMaximum, reading.Reason));
    }

    [Theory]
    [InlineData(DailyElement.PrecipitationMm, 0, false)]
    [InlineData(DailyElement.PrecipitationMm, 2.5, true)]
    [InlineData(DailyElement.GustMps, 0, true)]
    [InlineData(DailyElement.SnowDepthCm, 30, false)]
    [InlineData(DailyElement.MinHumidityPercent, 100, false)]
    public void Check_KnowsWhichElementsMayStandStill(DailyElement element, double value, bool isRejected)
    {
        var readings = Enumerable.Range(0, 30).Select(day => new DailyReading(Day.PlusDays(day), element, value, null));

        var result = QualityControl.Check([.. readings], false);

        Assert.Equal(isRejected ? 30 : 0, result.Rejected.Count(reading => reading.Reason == RejectionReason.Stuck));
    }

    [Theory]
    [InlineData(24.9, true)]
    [InlineData(25.1, false)]
    public void Check_AsksForALeapOf25C_WhileTheSeasonIsNotKnown(double leapC, bool isUsable)
    {
        var result = QualityControl.Check(
            [Max(Day, 1), Max(Day.PlusDays(1), 1 + leapC), Max(Day.PlusDays(2), 1)], false);

        Assert.Equal(isUsable ? [] : [RejectionReason.Spike], result.Rejected.Select(reading => reading.Reason));
    }

    [Theory]
    [InlineData(39.9, true)]
    [InlineData(40.1, false)]
    public void Check_RejectsAMaximumFarAboveTheMinimaAround(double rangeC, bool isUsable)
    {
        var result = QualityControl.Check(
        [
            .. Enumerable.Range(0, 3).Select(day => Min(Day.PlusDays(day), -10 - day)),
            Max(Day, rangeC - 12), Max(Day.PlusDays(1), rangeC - 10), Max(Day.PlusDays(2), rangeC - 12),
        ], false);

        Assert.Equal(
            isUsable ? [] : [(Day.PlusDays(1), RejectionReason.DailyRange)],
            result.Rejected.Where(reading => reading.Element == DailyElement.MaxTemperatureC)
                .Select(reading => (reading.Date, reading.Reason)));
    }

    [Fact]
    public void Check_ToleratesRepeatedMonthsWithoutRain()
    {
        var days = DaySpan.Between(new(2012, 6, 1), new(2012, 8, 31));
        var readings = Enumerable.Range(0, days.Count)
            .Select(day => new DailyReading(days[day], DailyElement.PrecipitationMm, 0, null));

        Assert.Empty(QualityControl.Check([.. readings], false).Rejected);
    }

    [Fact]
    public void Check_RefusesAValueThatIsNoNumber() =>
        Assert.Throws<ArgumentException>(() => QualityControl.Check([Max(Day, double.NaN)], false));

    [Fact]
    public void WordsOf_SaysEveryReason() => Assert.Distinct(
        Enum.GetValues<RejectionReason>().Select(RejectedReading.WordsOf));

    private static DailyReading Min(LocalDate date, double value) =>
        new(date, DailyElement.MinTemperatureC, value, null);

    private static DailyReading Max(LocalDate date, double value) =>
        new(date, DailyElement.MaxTemperatureC, value, null);
}
