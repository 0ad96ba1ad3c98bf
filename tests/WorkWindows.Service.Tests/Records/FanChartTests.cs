using NodaTime;
using Shouldly;
using WorkWindows.Engine.Chances;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Records;

namespace WorkWindows.Service.Tests.Records;

/// <summary>
/// A place that is 1 °C warmer each year, the same all year: minima of 0 °C in 2000 and 25 °C in 2025.
/// </summary>
public sealed class FanChartTests
{
    private const double LatitudeDeg = 42;

    private static readonly LocalDate Today = new(2026, 2, 3);
    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["America/Detroit"];

    /// <summary>Quantiles of type 8 of 15 values: h = (15 + 1/3) p + 1/3 (Hyndman and Fan 1996).</summary>
    [Fact]
    public void Spread_HasQuantilesOfType8()
    {
        var spread = Spread.Of([.. Enumerable.Range(1, 15).Select(value => (double)value), double.NaN])!;

        // h = 1.8667, 4.1667, 8, 11.8333 and 14.1333.
        spread.ShouldBe(new(1.9, 4.2, 8, 11.8, 14.1));
    }

    [Fact]
    public void Spread_IsNone_WithFewerThanFifteenValues() =>
        Spread.Of([.. Enumerable.Repeat(1.0, 14), double.NaN]).ShouldBeNull();

    [Fact]
    public void Fan_BeginsAfterTheForecast_AndSpreadsWithTheDays()
    {
        var fan = Fan(2000, 7)!;

        fan.Days[0].Date.ShouldBe(new(2026, 1, 20));
        fan.Days.Count.ShouldBe(14 + 7 + 60);
        fan.Days[13].ShouldBe(new(new(2026, 2, 2), 78.8, 96.8, false, null, null));
        fan.Days[20].ShouldBe(new(new(2026, 2, 9), 14, 32, true, null, null));
        fan.Days[21].MinF.ShouldBeNull();
        var (near, far) = (fan.Days[21].Min!, fan.Days[80].Min!);
        (near.P10 <= near.P25 && near.P25 <= near.P50 && near.P50 <= near.P75 && near.P75 <= near.P90).ShouldBeTrue();
        (far.P90 - far.P10).ShouldBeGreaterThan(near.P90 - near.P10);
        fan.PastYears.Count.ShouldBe(26);
        fan.ColdestToCome(Today)!.Date.ShouldBe(new(2026, 2, 3));
        RecordWords.ColdestToCome(fan, Today).ShouldBe("Coldest in the forecast: 14 °F on Tue 3 Feb.");
        RecordWords.OfToday(fan, Today).ShouldBe("Today 14 to 32 °F by the forecast.");
        RecordWords.TooFew(fan).ShouldBeNull();
    }

    [Fact]
    public void Fan_EndsWithTheForecast_AndSaysWhy_WithTooFewYears()
    {
        var fan = Fan(2014, 7)!;

        fan.Days.Count.ShouldBe(14 + 7);
        RecordWords.TooFew(fan)!.ShouldEndWith("and the record has 12.");
    }

    [Fact]
    public void Fan_FollowsToday_WithoutAForecast()
    {
        var fan = Fan(2000, 0)!;

        fan.Days[14].Date.ShouldBe(Today);
        fan.Days[14].Min.ShouldNotBeNull();
        RecordWords.ColdestToCome(fan, Today).ShouldBeNull();
        RecordWords.OfToday(fan, Today).ShouldBe("Today's temperatures are not known.");
    }

    [Fact]
    public void Fan_IsNone_WithoutARecord() =>
        FanChart.Of(Signals(DailySeries.Empty, null), Ensemble.None, Today).ShouldBeNull();

    private static FanChart? Fan(int firstYear, int forecastDays)
    {
        var observed = DailySeries.Of(
            Readings(DaySpan.Between(new(firstYear, 1, 1), Today.PlusDays(-1)), day => day.Year - 2000));
        var forecast = forecastDays == 0 ? null : new Forecast(
            Today.AtStartOfDayInZone(Zone).ToInstant(), DailySeries.Of(Readings(new(Today, forecastDays), _ => -10)));
        var signals = Signals(observed, forecast);
        return FanChart.Of(signals, Ensemble.Of(new(observed), signals, forecast, LatitudeDeg), Today);
    }

    private static SignalSet Signals(DailySeries observed, Forecast? forecast) => SignalSetBuilder.Build(
        new("Steady", LatitudeDeg, -83), FanChart.DaysAround(Today), observed, forecast, Zone, WorkShift.Default,
        AlertReport.None);

    /// <summary>Maxima 10 °C above the minima.</summary>
    private static IEnumerable<DailyReading> Readings(DaySpan days, Func<LocalDate, double> minC) =>
        Enumerable.Range(0, days.Count).SelectMany(day => new DailyReading[]
        {
            new(days[day], DailyElement.MinTemperatureC, minC(days[day]), null),
            new(days[day], DailyElement.MaxTemperatureC, minC(days[day]) + 10, null),
        });
}
