using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Forecasts;
using static WorkWindows.Engine.Weather.DailyElement;
using static WorkWindows.Feeds.Tests.Forecasts.GridpointJson;

namespace WorkWindows.Feeds.Tests.Forecasts;

public class GridpointForecastTests
{
    private static readonly DateTimeZone Detroit = DateTimeZoneProviders.Tzdb["America/Detroit"];

    [Theory]
    // A daytime layer of 12 January, 7 to 20 h EST.
    [InlineData("maxTemperature", "2026-01-12T12:00:00+00:00/PT13H", MaxTemperatureC, "2026-01-12")]
    // A night layer, 19 h on 11 January to 9 h on 12 January EST: the morning is that of the 12th.
    [InlineData("minTemperature", "2026-01-12T00:00:00+00:00/PT14H", MinTemperatureC, "2026-01-12")]
    // A night that ends at midnight belongs to the day before.
    [InlineData("minTemperature", "2026-01-12T15:00:00+00:00/PT14H", MinTemperatureC, "2026-01-12")]
    [InlineData("minTemperature", "2026-01-12T00:00:00Z/PT12H", MinTemperatureC, "2026-01-12")]
    public void Read_PutsAnExtremeOnItsDay(string layer, string validTime, DailyElement element, string date)
    {
        var reading = Assert.Single(Read(Layer(layer, DegC, (validTime, "-6.5"))).Readings);
        Assert.Equal((element, date, -6.5), (reading.Element, $"{reading.Date:yyyy-MM-dd}", reading.Value));
        Assert.Null(reading.QualityFlag);
    }

    [Fact]
    public void Read_LeavesOutTheRestOfANight_ThatHadBegun() =>
        Assert.Equal(
            [new DailyReading(new(2026, 1, 12), MinTemperatureC, -4, null)],
            Read(Layer("minTemperature", DegC,
                ("2026-01-11T08:00:00+00:00/PT6H", "-9"), ("2026-01-12T00:00:00+00:00/PT14H", "-4"))).Readings);

    [Fact]
    public void Read_TakesHourlyTemperatures_WhereTheLayersSayNothing()
    {
        // Midnight to midnight EST is 5 to 5 h UTC.
        var forecast = Read(
            Layer("temperature", DegC,
                ("2026-01-12T05:00:00+00:00/PT10H", "-12"), ("2026-01-12T15:00:00+00:00/PT14H", "3.5"),
                ("2026-01-13T05:00:00+00:00/P1D", "1")),
            Layer("minTemperature", DegC, ("2026-01-13T00:00:00+00:00/PT14H", "-2")));
        Assert.Equal(
            [
                new(new(2026, 1, 12), MinTemperatureC, -12, null),
                new(new(2026, 1, 12), MaxTemperatureC, 3.5, null),
                new(new(2026, 1, 13), MinTemperatureC, -2, null),
                new(new(2026, 1, 13), MaxTemperatureC, 1, null),
            ],
            forecast.Readings);
    }

    [Theory]
    [InlineData("2026-01-12T05:00:00+00:00/P1D", 1)]
    [InlineData("2026-01-12T05:00:59+00:00/P1D", 1)]        // within a minute
    [InlineData("2026-01-12T06:00:00+00:00/P1D", 0)]        // an hour short at each end of two days
    [InlineData("2026-01-12T05:00:00+00:00/PT23H", 0)]
    [InlineData("2026-01-12T00:00:00+00:00/P7DT13H", 7)]
    [InlineData("2026-03-08T05:00:00+00:00/PT23H", 1)]      // the day on which clocks go forward has 23 hours
    [InlineData("2026-11-01T04:00:00+00:00/P1D", 0)]        // and the one on which they go back has 25
    [InlineData("2026-11-01T04:00:00+00:00/PT25H", 1)]
    public void Read_GivesWind_ForDaysThatAreWhollyCovered(string validTime, int days)
    {
        var date = validTime[..10];
        var issued = $"{date}T03:00:00+00:00";
        var forecast = GridpointForecast.Read(
            PayloadOf(issued,
            [
                Layer("maxTemperature", DegC, ($"{date}T12:00:00+00:00/PT13H", "20")),
                Layer("windSpeed", KmPerHour, (validTime, "36")),
            ]),
            Detroit, InstantOf(issued));
        var wind = forecast.Readings.Where(reading => reading.Element == WindMps).ToList();
        Assert.Equal(days, wind.Count);
        Assert.All(wind, reading => Assert.Equal(10, reading.Value, 1e-12));
    }

    [Fact]
    public void Read_TakesTheStrongestGust_OfTheHoursThatReachIntoADay()
    {
        var gusts = Read(Layer("windGust", KmPerHour,
            ("2026-01-12T00:00:00+00:00/PT6H", "72"), ("2026-01-12T06:00:00+00:00/PT24H", "18"))).Readings;
        Assert.Equal([new DailyReading(new(2026, 1, 12), GustMps, 20, null)], gusts);
    }

    [Theory]
    [InlineData("2026-01-12T12:00:00+00:00/PT13H", "null", "value", "null")]
    [InlineData("2026-01-12T12:00:00+00:00/PT13H", "121", "value", "121")]
    [InlineData("2026-01-12T12:00:00+00:00/PT13H", "-61", "value", "-61")]
    [InlineData("2026-01-12T12:00:00+00:00/PT13H", "\"9\"", "value", "\"9\"")]
    [InlineData("date:now +66064 seconds / PT13H", "9", "validTime", "date:now +66064 seconds / PT13H")]
    [InlineData("2026-01-12T12:00:00/PT13H", "9", "validTime", "2026-01-12T12:00:00/PT13H")]
    [InlineData("2026-01-12T12:00:00+00:00/P1M", "9", "validTime", "2026-01-12T12:00:00+00:00/P1M")]
    [InlineData("2026-01-12T12:00:00+00:00/-PT1H", "9", "validTime", "2026-01-12T12:00:00+00:00/-PT1H")]
    public void Read_RejectsAValue_AndKeepsTheOthers(string validTime, string value, string field, string shown)
    {
        var forecast = Read(
            Layer("maxTemperature", DegC, ("2026-01-11T12:00:00+00:00/PT13H", "2"), (validTime, value)));
        Assert.Equal(2, Assert.Single(forecast.Readings).Value);
        var fault = Assert.Single(forecast.Faults.Faults);
        Assert.Equal(($"maxTemperature.values[1].{field}", shown), (fault.Field, fault.Value));
    }

    [Fact]
    public void Read_LeavesADayOpen_WhoseHourWasRejected()
    {
        var forecast = Read(
            Layer("windSpeed", KmPerHour,
                ("2026-01-12T05:00:00+00:00/PT23H", "10"), ("2026-01-13T04:00:00+00:00/PT1H", "null"),
                ("2026-01-13T05:00:00+00:00/P1D", "20")));
        Assert.Equal(new LocalDate(2026, 1, 13), Assert.Single(forecast.Readings).Date);
    }

    // The hours that are left of 12 January from 13:00 local time on: no day's maximum, but no less than that.
    [Fact]
    public void Read_GivesTheStrongestGustOfTheRestOfToday_ApartFromWholeDays()
    {
        var forecast = Read(Layer("windGust", KmPerHour,
            ("2026-01-12T18:00:00+00:00/PT6H", "72"), ("2026-01-13T00:00:00+00:00/PT29H", "18")));

        Assert.Equal([new DailyReading(new(2026, 1, 12), GustMps, 20, null)], forecast.RestOfDay);
        Assert.Equal([new DailyReading(new(2026, 1, 13), GustMps, 5, null)], forecast.Readings);
    }

    [Fact]
    public void Read_AddsUpTheRainOfADay_AndSharesASpanOverMidnight()
    {
        // Midnight EST is 5 h UTC: the first span lies two thirds in the 12th, the last one third in the 13th.
        var rain = Read(Layer("quantitativePrecipitation", Mm,
            ("2026-01-12T03:00:00+00:00/PT6H", "3"), ("2026-01-12T09:00:00+00:00/PT18H", "1.5"),
            ("2026-01-13T03:00:00+00:00/PT6H", "6")));
        var day = Assert.Single(rain.Readings);
        Assert.Equal((new LocalDate(2026, 1, 12), PrecipitationMm), (day.Date, day.Element));
        Assert.Equal(2 + 1.5 + 2, day.Value, 1e-9);
        Assert.Empty(rain.RestOfDay);
    }

    [Fact]
    public void Read_LeavesOutTheRainOfADay_OfWhichAnHourIsMissing() =>
        Assert.Equal(new LocalDate(2026, 1, 13), Assert.Single(Read(Layer("quantitativePrecipitation", Mm,
            ("2026-01-12T06:00:00+00:00/PT23H", "3"), ("2026-01-13T05:00:00+00:00/P1D", "0"))).Readings).Date);

    [Fact]
    public void Read_TakesTheDriestAndTheMostThunderyHour_OfWholeDaysAndOfTheRestOfToday()
    {
        var forecast = Read(
            Layer("relativeHumidity", Percent,
                ("2026-01-12T18:00:00+00:00/PT6H", "42"), ("2026-01-13T00:00:00+00:00/PT14H", "80"),
                ("2026-01-13T14:00:00+00:00/PT15H", "31")),
            Layer("probabilityOfThunder", Percent,
                ("2026-01-12T18:00:00+00:00/PT6H", "15"), ("2026-01-13T00:00:00+00:00/PT29H", "0")));

        Assert.Equal(
            [
                new(new(2026, 1, 13), MinHumidityPercent, 31, null),
                new(new(2026, 1, 13), ThunderChancePercent, 0, null),
            ],
            forecast.Readings);
        Assert.Equal(
            [
                new(new(2026, 1, 12), MinHumidityPercent, 42, null),
                new(new(2026, 1, 12), ThunderChancePercent, 15, null),
            ],
            forecast.RestOfDay);
    }

    // The service names no unit for the chance of thunder; every other layer must have its own.
    [Theory]
    [InlineData("probabilityOfThunder", 1)]
    [InlineData("relativeHumidity", 0)]
    [InlineData("quantitativePrecipitation", 0)]
    public void Read_TakesALayerWithoutAUnit_OnlyWhereTheServiceGivesNone(string layer, int days)
    {
        var forecast = Read(
            Layer("maxTemperature", DegC, ("2026-01-12T12:00:00+00:00/PT13H", "-3")),
            Layer(layer, Percent, ("2026-01-12T05:00:00+00:00/P1D", "20"))
                .Replace("\"uom\": \"wmoUnit:percent\", ", ""));
        Assert.Equal(1 + days, forecast.Readings.Length);
        Assert.Equal(1 - days, forecast.Faults.Faults.Length);
    }

    [Theory]
    [InlineData("snowLevel", "wmoUnit:m")]
    [InlineData("snowfallAmount", Mm)]
    public void Read_GivesNoDepthOfSnow(string layer, string unit)
    {
        var forecast = Read(
            Layer("maxTemperature", DegC, ("2026-01-12T12:00:00+00:00/PT13H", "-3")),
            Layer(layer, unit, ("2026-01-12T05:00:00+00:00/P1D", "90")));
        Assert.Equal(MaxTemperatureC, Assert.Single(forecast.Readings).Element);
    }

    [Theory]
    [InlineData("relativeHumidity", Percent, "101")]
    [InlineData("probabilityOfThunder", Percent, "-1")]
    [InlineData("quantitativePrecipitation", Mm, "2001")]
    public void Read_RejectsWhatCannotBe(string layer, string unit, string value)
    {
        var forecast = Read(Layer(layer, unit,
            ("2026-01-12T05:00:00+00:00/P1D", value), ("2026-01-13T05:00:00+00:00/P1D", "20")));
        Assert.Equal(new LocalDate(2026, 1, 13), Assert.Single(forecast.Readings).Date);
        Assert.Equal($"{layer}.values[0].value", Assert.Single(forecast.Faults.Faults).Field);
    }

    [Fact]
    public void Read_RejectsALayerInAnotherUnit()
    {
        var forecast = Read(
            Layer("maxTemperature", "wmoUnit:degF", ("2026-01-12T12:00:00+00:00/PT13H", "40")),
            Layer("minTemperature", DegC, ("2026-01-12T00:00:00+00:00/PT14H", "-4")));
        Assert.Equal(MinTemperatureC, Assert.Single(forecast.Readings).Element);
        Assert.Equal("maxTemperature.uom 'wmoUnit:degF': wmoUnit:degC", forecast.Faults.ToString());
    }

    [Theory]
    [InlineData("")]
    [InlineData("{\"properties\": {\"updateTime\": \"2026-0")]
    [InlineData("[]")]
    [InlineData("{\"type\": \"FeatureCollection\", \"features\": []}")]
    [InlineData("{\"properties\": {}}")]
    [InlineData("{\"properties\": {\"updateTime\": \"yesterday\"}}")]
    [InlineData("{\"properties\": {\"updateTime\": \"\\ud800\"}}")]
    [InlineData("{\"properties\": {\"updateTime\": \"2026-01-10T03:00:00+00:00\"}}")]
    [InlineData("{\"properties\": {\"updateTime\": \"2026-01-10T03:00:00+00:00\", \"temperature\": 5}}")]
    public void Read_RefusesAPayloadOfWhichNothingCanBeUsed(string json) =>
        Assert.Throws<FeedFormatException>(
            () => GridpointForecast.Read(System.Text.Encoding.UTF8.GetBytes(json), Detroit, InstantOf(Issued)));

    // An issue in the future would never age and stand above all later ones; clocks may differ by five minutes.
    [Theory]
    [InlineData("2026-01-10T03:05:00+00:00", true)]
    [InlineData("2026-01-10T03:05:01+00:00", false)]
    [InlineData("2126-01-10T03:00:00+00:00", false)]
    [InlineData("9999-12-31T23:59:59+00:00", false)]
    public void Read_RefusesAForecastThatWasIssuedAfterItsReply(string updateTime, bool isTaken)
    {
        var json = PayloadOf(
            updateTime, [Layer("maxTemperature", DegC, ("2026-01-12T12:00:00+00:00/PT13H", "-3"))]);

        var fault = Record.Exception(() => GridpointForecast.Read(json, Detroit, InstantOf(Issued)));

        if (isTaken)
            Assert.Null(fault);
        else
            Assert.Equal(
                $"updateTime '{updateTime}' is more than 5 minutes after the reply, of 2026-01-10T03:00:00Z.",
                Assert.IsType<FeedFormatException>(fault).Message);
    }

    // Issued on 10 January at 3 h UTC: two days before and sixteen days after.
    [Theory]
    [InlineData("2026-01-08T03:00:00+00:00/PT13H", true)]
    [InlineData("2026-01-08T02:59:00+00:00/PT13H", false)]
    [InlineData("2026-01-25T14:00:00+00:00/PT13H", true)]
    [InlineData("2026-01-25T14:01:00+00:00/PT13H", false)]
    [InlineData("2000-01-01T12:00:00+00:00/PT13H", false)]
    [InlineData("2099-12-31T12:00:00+00:00/PT13H", false)]
    public void Read_NamesWhatNoForecastReaches_AndLeavesItOut(string validTime, bool isTaken)
    {
        var forecast = Read(Layer("maxTemperature", DegC,
            ("2026-01-12T12:00:00+00:00/PT13H", "2"), (validTime, "3")));

        Assert.Equal(isTaken ? 2 : 1, forecast.Readings.Length);
        Assert.Equal(
            isTaken ? [] : [("maxTemperature.values[1].validTime", validTime)],
            forecast.Faults.Faults.Select(fault => (fault.Field, fault.Value)));
    }

    [Fact]
    public void Read_LaysOutNoDaysInBetween_OfAReplyThatSpansACentury()
    {
        // Every layer but the extremes is laid out by day: a century of days times these intervals took minutes.
        var hours = Enumerable.Range(0, 20_000).Select(i => ($"2026-01-12T05:{i % 60:00}:00+00:00/PT1H", "18"));

        var forecast = Read(Layer("windSpeed", KmPerHour,
            [("2000-01-01T00:00:00+00:00/PT1H", "18"), .. hours, ("2026-01-13T05:00:00+00:00/P1D", "36"),
                ("2100-12-31T00:00:00+00:00/PT1H", "18")]));

        Assert.Equal([new DailyReading(new(2026, 1, 13), WindMps, 10, null)], forecast.Readings);
        Assert.Equal(2, forecast.Faults.Faults.Length);
    }

    [Fact]
    public void Read_RefusesBytesThatAreNotUtf8() =>
        Assert.Equal("The reply is not UTF-8.", Assert.Throws<FeedFormatException>(() => GridpointForecast.Read(
            System.Text.Encoding.Latin1.GetBytes("{\"properties\": {\"updateTime\": \"\u00e9\"}}"), Detroit,
            InstantOf(Issued))).Message);

    private static DailyForecast Read(params IEnumerable<string> layers) =>
        GridpointForecast.Read(Payload(layers), Detroit, InstantOf(Issued));

    private static Instant InstantOf(string text) => OffsetDateTimePattern.Rfc3339.Parse(text).Value.ToInstant();
}
