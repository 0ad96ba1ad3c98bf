using System.Text;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Forecasts;
using static WorkWindows.Engine.Weather.DailyElement;

namespace WorkWindows.Feeds.Tests.Forecasts;

public class HourlyForecastTests
{
    private static readonly DateTimeZone NewYork = DateTimeZoneProviders.Tzdb["America/New_York"];
    private static readonly LocalDate Monday = new(2026, 4, 13);
    private static readonly Instant Answered = Instant.FromUtc(2026, 4, 12, 12, 0);

    [Fact]
    public void Read_GivesTheDaysOfARealForecast()
    {
        // Albany: the hours that reach into 13 April, local time, have 62 to 84 °F, up to 17 mph, and 40 % at least.
        var forecast = HourlyForecast.Read(
            Reference("forecast/gridpoints/ALY/71,67/forecast/hourly.json"), NewYork, Answered);

        Assert.Equal(Instant.FromUtc(2026, 4, 12, 10, 27, 58), forecast.IssuedAt);
        Assert.True(forecast.Faults.IsEmpty);
        Assert.Equal((84 - 32) / 1.8, Value(forecast, Monday, MaxTemperatureC)!.Value, 9);
        Assert.Equal((62 - 32) / 1.8, Value(forecast, Monday, MinTemperatureC)!.Value, 9);
        Assert.Equal(17 * 0.44704, Value(forecast, Monday, WindMps)!.Value, 9);
        Assert.Equal(40, Value(forecast, Monday, MinHumidityPercent));
        Assert.Equal(
            Enumerable.Range(13, 5).Select(day => new LocalDate(2026, 4, day)),
            forecast.Readings.Select(reading => reading.Date).Distinct());
        Assert.Equal(forecast.Readings.OrderBy(reading => (reading.Date, reading.Element)), forecast.Readings);
        Assert.Equal(
            [WindMps, MinHumidityPercent], forecast.RestOfDay.Select(reading => reading.Element));
        Assert.All(forecast.RestOfDay, rest => Assert.Equal(new LocalDate(2026, 4, 12), rest.Date));
    }

    public static TheoryData<string, DailyElement, double> Hours => new()
    {
        { "\"temperature\": 20, \"temperatureUnit\": \"F\"", MinTemperatureC, -12 / 1.8 },
        { "\"temperature\": \"41\", \"temperatureUnit\": \"F\"", MaxTemperatureC, 5 },      // as a text
        { "\"temperature\": 25.5, \"temperatureUnit\": \"C\"", MaxTemperatureC, 25.5 },     // units=si
        { "\"temperature\": {\"unitCode\": \"wmoUnit:degC\", \"value\": 3}", MaxTemperatureC, 3 },
        { "\"windSpeed\": \"10 mph\"", WindMps, 4.4704 },
        { "\"windSpeed\": \"5 to 10 mph\"", WindMps, 4.4704 },                              // the upper end
        { "\"windSpeed\": \"5 to 10 km/h\"", WindMps, 10 / 3.6 },
        { "\"windSpeed\": {\"unitCode\": \"wmoUnit:km_h-1\", \"value\": 18}", WindMps, 5 },
        { "\"windSpeed\": {\"unitCode\": \"wmoUnit:km_h-1\", \"minValue\": 9, \"maxValue\": 36}", WindMps, 10 },
        { "\"windGust\": \"45 mph\"", GustMps, 20.1168 },
        { "\"relativeHumidity\": {\"unitCode\": \"wmoUnit:percent\", \"value\": 63}", MinHumidityPercent, 63 },
    };

    [Theory]
    [MemberData(nameof(Hours))]
    public void Read_TakesAnHour_InEachUnitAndForm(string members, DailyElement element, double value)
    {
        var forecast = HourlyForecast.Read(Payload(Day(members)), NewYork, Answered);
        Assert.Equal(value, Value(forecast, Monday, element)!.Value, 9);
        Assert.True(forecast.Faults.IsEmpty);
    }

    public static TheoryData<string, string, string, string> Rejected => new()
    {
        { Degrees("40", "F"), Degrees("250", "F"), "temperature", "250" },
        { Degrees("40", "F"), Degrees("-350", "F"), "temperature", "-350" },
        { Degrees("40", "F"), Degrees("40", "K"), "temperature", "40" },
        { Degrees("40", "F"), "\"temperature\": 40", "temperature", "40" },
        { Degrees("40", "F"), Degrees("\"date:now\"", "F"), "temperature", "date:now" },
        { Wind("5 mph"), Wind("date:now +66064 seconds / PT13H"), "windSpeed", "date:now +66064 seconds / PT13H" },
        { Wind("5 mph"), Wind("900 mph"), "windSpeed", "900 mph" },
        { Wind("5 mph"), Wind("5 kn"), "windSpeed", "5 kn" },
        { Wind("5 mph"), "\"windSpeed\": 5", "windSpeed", "5" },
        { "\"relativeHumidity\": {\"unitCode\": \"wmoUnit:percent\", \"value\": 63}",
            "\"relativeHumidity\": {\"unitCode\": \"wmoUnit:percent\", \"value\": 163}", "relativeHumidity",
            "{\"unitCode\": \"wmoUnit:percent\", \"value\": 163}" },
    };

    [Theory]
    [MemberData(nameof(Rejected))]
    public void Read_RejectsAnHourWithItsReason_AndLeavesOutItsDay(string sound, string bad, string field, string value)
    {
        const string gust = "\"windGust\": \"45 mph\", ";
        var hours = Day(gust + sound).ToArray();
        hours[5] = hours[5].Replace(sound, bad, StringComparison.Ordinal);

        var forecast = HourlyForecast.Read(Payload(hours), NewYork, Answered);

        var fault = Assert.Single(forecast.Faults.Faults);
        Assert.Equal(($"periods[5].{field}", value), (fault.Field, fault.Value));
        Assert.Equal([GustMps], forecast.Readings.Select(reading => reading.Element));
    }

    [Theory]
    [InlineData("\"probabilityOfPrecipitation\": {\"unitCode\": \"wmoUnit:percent\", \"value\": null}")]
    [InlineData("\"windSpeed\": null, \"temperature\": null")]
    [InlineData("\"relativeHumidity\": {\"unitCode\": null, \"value\": null}")]
    public void Read_TakesANullForNothing(string members)
    {
        var forecast = HourlyForecast.Read(Payload(Day("\"windGust\": \"45 mph\", " + members)), NewYork, Answered);
        Assert.Equal([GustMps], forecast.Readings.Select(reading => reading.Element));
        Assert.True(forecast.Faults.IsEmpty);
    }

    [Theory]
    [InlineData("gridpoints_forecast_hourly_us.json")]
    [InlineData("gridpoints_forecast_hourly_si.json")]
    public void Read_RefusesAForecastOfTwoHours_BecauseItCoversNoDay(string file)
    {
        var fault = Assert.Throws<FeedFormatException>(
            () => HourlyForecast.Read(Reference($"forecast-units/{file}"), NewYork, Answered));
        Assert.Equal("The forecast covers no day with a usable value.", fault.Message);
    }

    [Fact]
    public void Read_NamesWhatIsWrong_OfAnEmptyPeriod()
    {
        var fault = Assert.Throws<FeedFormatException>(
            () => HourlyForecast.Read(
                Reference("forecast-units/gridpoints_forecast_hourly_empty_us.json"), NewYork, Answered));
        Assert.Contains(
            "periods[0].startTime 'null': an instant from 2000 to 2100", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_RejectsTheAbsurdValuesOfAnEditedForecast_WithTheirReason()
    {
        // Its periods are half days; the first two were edited to 250 and -350 °F.
        var chicago = DateTimeZoneProviders.Tzdb["America/Chicago"];
        var forecast = HourlyForecast.Read(Reference("forecast/gridpoints/MPX/1,1/forecast.json"), chicago, Answered);
        Assert.Equal(
            [
                "periods[0].temperature '250': a number from -60 to 55 °C with its unit, F or C",
                "periods[1].temperature '-350': a number from -60 to 55 °C with its unit, F or C",
            ],
            forecast.Faults.Faults.Select(fault => fault.ToString()));
        Assert.All(forecast.Readings, reading => Assert.NotEqual(new LocalDate(2026, 4, 12), reading.Date));
    }

    [Fact]
    public void Read_RejectsAnHourThatNoForecastReaches()
    {
        var far = """{"startTime": "2099-12-31T22:00:00Z", "endTime": "2099-12-31T23:00:00Z", "windGust": "45 mph"}""";
        var forecast = HourlyForecast.Read(Payload(Day("\"windGust\": \"45 mph\"").Append(far)), NewYork, Answered);

        Assert.Equal(
            "periods[24].startTime '2099-12-31T22:00:00Z/2099-12-31T23:00:00Z': a time from 2026-04-10T10:00:00Z to "
            + "2026-04-28T10:00:00Z, 16 days after the issue",
            Assert.Single(forecast.Faults.Faults).ToString());
        Assert.Equal(Monday, Assert.Single(forecast.Readings).Date);
    }

    [Fact]
    public void Read_RefusesAForecastThatWasIssuedAfterItsReply() => Assert.Contains(
        "more than 5 minutes after the reply",
        Assert.Throws<FeedFormatException>(() => HourlyForecast.Read(
            Payload(Day("\"windGust\": \"45 mph\"")), NewYork, Instant.FromUtc(2026, 4, 12, 9, 54))).Message,
        StringComparison.Ordinal);

    [Fact]
    public void Read_RejectsAnHourThatIsThousandsOfYearsAway()
    {
        var far = """{"startTime": "9999-12-31T22:00:00Z", "endTime": "9999-12-31T23:00:00Z", "windGust": "45 mph"}""";
        var forecast = HourlyForecast.Read(Payload(Day("\"windGust\": \"45 mph\"").Append(far)), NewYork, Answered);

        Assert.Equal(
            ["periods[24].startTime", "periods[24].endTime"], forecast.Faults.Faults.Select(fault => fault.Field));
        Assert.Equal(Monday, Assert.Single(forecast.Readings).Date);
    }

    [Theory]
    [InlineData("{\"properties\": {\"updateTime\": \"2026-04-12T10:00:00+00:00\"}}")]
    [InlineData("{\"properties\": {\"updateTime\": \"date:now\", \"periods\": []}}")]
    [InlineData("[]")]
    [InlineData("")]
    public void Read_RefusesAReplyThatIsNoForecast(string json) =>
        Assert.Throws<FeedFormatException>(() => HourlyForecast.Read(Encoding.UTF8.GetBytes(json), NewYork, Answered));

    private static string Degrees(string value, string unit) =>
        $"\"temperature\": {value}, \"temperatureUnit\": \"{unit}\"";

    private static string Wind(string text) => $"\"windSpeed\": \"{text}\"";

    private static IEnumerable<string> Day(string members) => Enumerable.Range(4, 24).Select(hour =>
    {
        var start = Instant.FromUtc(2026, 4, 13, 0, 0) + Duration.FromHours(hour);
        return $$"""{"startTime": "{{start}}", "endTime": "{{start + Duration.FromHours(1)}}", {{members}}}""";
    });

    private static byte[] Payload(IEnumerable<string> periods) => Encoding.UTF8.GetBytes(
        $$"""{"properties": {"updateTime": "2026-04-12T10:00:00+00:00", "periods": [{{string.Join(',', periods)}}] } }""");

    private static double? Value(DailyForecast forecast, LocalDate date, DailyElement element) => forecast.Readings
        .Where(reading => (reading.Date, reading.Element) == (date, element))
        .Select(reading => (double?)reading.Value).SingleOrDefault();

    private static byte[] Reference(string path) => File.ReadAllBytes(ProjectFiles.Reference($"feeds/{path}"));
}
