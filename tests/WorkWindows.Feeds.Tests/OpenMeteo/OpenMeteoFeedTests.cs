using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.OpenMeteo;
using WorkWindows.Feeds.Tests.Forecasts;
using WorkWindows.Feeds.Tests.Manners;
using static WorkWindows.Engine.Weather.DailyElement;

namespace WorkWindows.Feeds.Tests.OpenMeteo;

public class OpenMeteoFeedTests
{
    private const string Units = """
        "time":"iso8601","temperature_2m_max":"°C","temperature_2m_min":"°C","precipitation_sum":"mm",
        "wind_speed_10m_max":"m/s","wind_gusts_10m_max":"m/s","relative_humidity_2m_min":"%"
        """;

    private const string Values = """
        "time":["2025-05-29","2025-05-30"],"temperature_2m_max":[27.8,null],"temperature_2m_min":[12.5,11.1],
        "precipitation_sum":[0,3.2],"wind_speed_10m_max":[6.4,null],"wind_gusts_10m_max":[13,null],
        "relative_humidity_2m_min":[41,null]
        """;

    private static readonly LocalDate First = new(2025, 5, 29);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Fetch_AsksTheArchive_ForDaysAndUnits()
    {
        var query = "";
        await using var server = await ReplayServer.StartAsync(context =>
        {
            query = $"{context.Request.QueryString}";
            return SendAsync(context, 200, Reply(Units, Values));
        });
        using var feeds = new TestFeeds(server.Address);

        var reply = await FetchAsync(feeds, OpenMeteoArchiveFeed.FeedKey);

        Assert.Equal("/v1/archive", server.Requests.Single().Path);
        Assert.Equal(
            "?latitude=42.745&longitude=-73.752&elevation=85&daily=temperature_2m_min,temperature_2m_max,"
            + "wind_speed_10m_max,wind_gusts_10m_max,precipitation_sum,relative_humidity_2m_min"
            + "&timezone=America%2FDetroit&temperature_unit=celsius&wind_speed_unit=ms&precipitation_unit=mm"
            + "&timeformat=iso8601&start_date=2025-05-29&end_date=2025-05-30", query);
        var observed = Assert.IsType<DailyFeedReply.Observed>(reply);
        Assert.True(observed.Faults.IsEmpty, observed.Faults.ToString());
        Assert.Equal(
            [
                new(First, MinTemperatureC, 12.5, null),
                new(First, MaxTemperatureC, 27.8, null),
                new(First, WindMps, 6.4, null),
                new(First, GustMps, 13, null),
                new(First, PrecipitationMm, 0, null),
                new(First, MinHumidityPercent, 41, null),
                new(First.PlusDays(1), MinTemperatureC, 11.1, null),
                new(First.PlusDays(1), PrecipitationMm, 3.2, null),
            ],
            observed.Readings);
    }

    [Fact]
    public async Task Fetch_GivesForecasts_WithTheTimeOfTheReply()
    {
        await using var server = await ReplayServer.StartAsync(context =>
        {
            context.Response.Headers.Date = "Thu, 29 May 2025 09:30:00 GMT";
            return SendAsync(context, 200, Reply(Units, Values));
        });
        using var feeds = new TestFeeds(server.Address);

        var reply = await FetchAsync(feeds, OpenMeteoForecastFeed.FeedKey);

        Assert.Equal("/v1/forecast", server.Requests.Single().Path);
        var forecast = Assert.IsType<DailyFeedReply.Foretold>(reply).Forecast;
        Assert.Equal(Instant.FromUtc(2025, 5, 29, 9, 30), forecast.IssuedAt);
        Assert.Equal(8, forecast.Readings.Length);
        Assert.Empty(forecast.RestOfDay);
    }

    [Theory]
    [InlineData(
        "\"temperature_2m_max\":\"°C\"", "\"temperature_2m_max\":\"°F\"", "daily_units.temperature_2m_max", "\"°F\"")]
    [InlineData("\"wind_gusts_10m_max\":\"m/s\"", "\"x\":\"m/s\"", "daily_units.wind_gusts_10m_max", "absent")]
    [InlineData("[27.8,null]", "[27.8]", "daily.temperature_2m_max", "[27.8]")]
    [InlineData("[27.8,null]", "[278,null]", "daily.temperature_2m_max[0]", "278")]
    [InlineData("[27.8,null]", "[\"27.8\",null]", "daily.temperature_2m_max[0]", "\"27.8\"")]
    [InlineData("\"2025-05-30\"]", "\"2025-05-29\"]", "daily.temperature_2m_min[1]", "2025-05-29")]
    public async Task Fetch_NamesWhatCannotBeUsed_AndKeepsTheRest(
        string old, string changed, string field, string value)
    {
        await using var server = await ReplayServer.StartAsync(
            context => SendAsync(context, 200, Reply(Units, Values).Replace(old, changed)));
        using var feeds = new TestFeeds(server.Address);

        var observed = Assert.IsType<DailyFeedReply.Observed>(await FetchAsync(feeds, OpenMeteoArchiveFeed.FeedKey));

        Assert.Equal((field, value), (observed.Faults.Faults[0].Field, observed.Faults.Faults[0].Value));
        Assert.Contains(observed.Readings, reading => reading.Element == MinHumidityPercent);
    }

    // The clock of the test stands at 12 April 2026; a server that is ahead is not believed.
    [Fact]
    public async Task Fetch_NamesTheDaysThatNoForecastReaches_AndKeepsTheOthers()
    {
        var values = Values.Replace("2025-05-29", "2026-04-28").Replace("2025-05-30", "2026-04-29");
        await using var server = await ReplayServer.StartAsync(context =>
        {
            context.Response.Headers.Date = "Thu, 12 Apr 2125 09:30:00 GMT";
            return SendAsync(context, 200, Reply(Units, values));
        });
        using var feeds = new TestFeeds(server.Address);

        var forecast = Assert.IsType<DailyFeedReply.Foretold>(
            await FetchAsync(feeds, OpenMeteoForecastFeed.FeedKey)).Forecast;

        Assert.Equal(Instant.FromUtc(2026, 4, 12, 12, 0), forecast.IssuedAt);
        Assert.All(forecast.Readings, reading => Assert.Equal(new LocalDate(2026, 4, 28), reading.Date));
        Assert.Equal(
            "daily.time[1] '\"2026-04-29\"': a date from 2026-04-10 to 2026-04-28",
            Assert.Single(forecast.Faults.Faults).ToString());
    }

    [Theory]
    [InlineData("{\"timezone\":\"America/Detroit\"}")]
    [InlineData("{\"timezone\":\"GMT\",\"daily\":{\"time\":[]}}")]
    [InlineData("[{},{}]")]
    [InlineData("{\"timezone\":\"America/Detroit\",\"daily\":{\"time\":[\"2025-05-29\"")]
    public async Task Fetch_RefusesAReplyWithoutItsDays(string body)
    {
        await using var server = await ReplayServer.StartAsync(context => SendAsync(context, 200, body));
        using var feeds = new TestFeeds(server.Address);
        await Assert.ThrowsAsync<FeedFormatException>(() => FetchAsync(feeds, OpenMeteoForecastFeed.FeedKey));
    }

    [Fact]
    public async Task Fetch_GivesTheReason_WhenTheServiceRefuses()
    {
        await using var server = await ReplayServer.StartAsync(
            context => SendAsync(context, 400, "{\"error\":true,\"reason\":\"Cannot initialize WeatherVariable\"}"));
        using var feeds = new TestFeeds(server.Address);

        var fault = await Assert.ThrowsAsync<FeedRefusedException>(
            () => FetchAsync(feeds, OpenMeteoForecastFeed.FeedKey));

        Assert.Equal("Cannot initialize WeatherVariable", fault.Detail);
    }

    [Fact]
    public async Task Fetch_SendsTheKeyOfAPaidPlan_AndLogsItNowhere()
    {
        var query = "";
        await using var server = await ReplayServer.StartAsync(context =>
        {
            query = $"{context.Request.QueryString}";
            return SendAsync(context, 500, "{}");
        });
        var logs = new Lines();
        using var feeds = new TestFeeds(server.Address, options => options.OpenMeteoKey = "s3cret&", logs);

        var fault = await Assert.ThrowsAsync<FeedRefusedException>(
            () => FetchAsync(feeds, OpenMeteoForecastFeed.FeedKey));

        Assert.EndsWith("&apikey=s3cret%26", query, StringComparison.Ordinal);
        Assert.NotEmpty(logs.Written);
        Assert.DoesNotContain(logs.Written, line => line.Contains("s3cret", StringComparison.Ordinal));
        Assert.DoesNotContain("s3cret", fault.ToString(), StringComparison.Ordinal);
    }

    private static Task<DailyFeedReply> FetchAsync(TestFeeds feeds, string key)
    {
        IDailyFeed feed = key == OpenMeteoArchiveFeed.FeedKey
            ? new OpenMeteoArchiveFeed(feeds.Http, feeds.Options)
            : new OpenMeteoForecastFeed(feeds.Http, feeds.Options);
        Assert.Equal(key, feed.Key);
        return feed.FetchAsync(
            TestFeeds.Request(First, First.PlusDays(1), "America/Detroit", station: null), Cancellation);
    }

    private static string Reply(string units, string values) => $$"""
        {"latitude":42.75,"longitude":-73.75,"elevation":85,"generationtime_ms":0.1,"utc_offset_seconds":-14400,
         "timezone":"America/Detroit","daily_units":{ {{units}} },"daily":{ {{values}} } }
        """;

    private static Task SendAsync(HttpContext context, int status, string body) =>
        ReplayServer.SendAsync(context, status, "application/json; charset=utf-8", Encoding.UTF8.GetBytes(body));

    /// <summary>Keeps every line that anything logs.</summary>
    private sealed class Lines : ILoggerProvider, ILogger
    {
        public List<string> Written { get; } = [];

        public ILogger CreateLogger(string categoryName) => this;

        public IDisposable? BeginScope<TState>(TState state) where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(
            LogLevel logLevel, EventId eventId, TState state, Exception? exception,
            Func<TState, Exception?, string> formatter)
        {
            lock (Written)
                Written.Add($"{formatter(state, exception)} {exception}");
        }

        public void Dispose()
        {
        }
    }
}
