using System.Net;
using System.Text;
using Microsoft.AspNetCore.Http;
using NodaTime;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Forecasts;
using WorkWindows.Feeds.Tests.Manners;
using static WorkWindows.Engine.Weather.DailyElement;

namespace WorkWindows.Feeds.Tests.Forecasts;

public class NwsFeedTests
{
    private const string GeoJson = "application/geo+json";
    private const string Problem = "application/problem+json";

    private static readonly DailyFeedRequest Albany =
        TestFeeds.Request(new(2026, 4, 12), new(2026, 4, 12), station: null);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(NwsGridpointFeed.FeedKey, "/gridpoints/ALY/71,67")]
    [InlineData(NwsHourlyFeed.FeedKey, "/gridpoints/ALY/71,67/forecast/hourly")]
    public async Task Fetch_FollowsThePointToItsForecast_OnTheHostThatIsConfigured(string key, string path)
    {
        await using var server = await ReplayServer.StartAsync(SendFile);
        using var feeds = new TestFeeds(server.Address);

        var reply = await FetchAsync(feeds, key, Albany);

        var forecast = Assert.IsType<DailyFeedReply.Foretold>(reply).Forecast;
        Assert.Equal(Instant.FromUtc(2026, 4, 12, 10, 27, 58), forecast.IssuedAt);
        Assert.Contains(forecast.Readings, reading => reading.Element == MaxTemperatureC);
        Assert.Equal(
            [("/points/42.745,-73.752", TestFeeds.UserAgent), (path, TestFeeds.UserAgent)], server.Requests);
    }

    [Fact]
    public async Task Fetch_SaysThatNothingIsNewer_AndKeepsThePoint()
    {
        const string modified = "Sun, 12 Apr 2026 10:30:00 GMT";
        await using var server = await ReplayServer.StartAsync(context =>
        {
            if (context.Request.Path.StartsWithSegments("/points"))
                context.Response.Headers.CacheControl = "public, max-age=73000";
            context.Response.Headers.LastModified = modified;
            if (context.Request.Headers.IfModifiedSince != modified)
                return SendFile(context);
            context.Response.StatusCode = StatusCodes.Status304NotModified;
            return Task.CompletedTask;
        });
        using var feeds = new TestFeeds(server.Address);

        var first = await FetchAsync(feeds, NwsGridpointFeed.FeedKey, Albany);
        var second = await FetchAsync(feeds, NwsGridpointFeed.FeedKey, Albany with { Before = first.Validators });

        Assert.Equal(new FeedValidators(null, modified), first.Validators);
        Assert.Equal(new DailyFeedReply.NotModified(first.Validators, null), second);
        Assert.Equal(3, server.Requests.Count);
    }

    [Theory]
    [InlineData(404, Problem, "InvalidPoint", "Data Unavailable For Requested Point", "Unable to provide data.")]
    [InlineData(403, Problem, "Forbidden", "Forbidden", "Please send a User-Agent.")]
    [InlineData(500, Problem, "UnexpectedProblem", "Unexpected Problem", "An unexpected problem has occurred.")]
    [InlineData(503, Problem, "ForecastGridExpired", "Forecast Grid Expired",
        "The requested forecast grid was issued 2020-02-11T11:36:27+00:00 and has expired.")]
    public async Task Fetch_NamesTheProblem(int status, string type, string name, string title, string detail)
    {
        var fault = await RefusalAsync(status, type, $$"""
            {"correlationId": "1", "title": "{{title}}", "type": "https://api.weather.gov/problems/{{name}}",
             "status": {{status}}, "detail": "{{detail}}", "instance": "https://api.weather.gov/requests/1"}
            """);
        Assert.Equal((status, name), ((int)fault.Status, fault.Problem));
        Assert.Equal($"The feed answered {status} {title}: {detail}", fault.Message);
    }

    [Theory]
    [InlineData("text/html", "<html>Service Unavailable</html>")]
    [InlineData("text/plain", "")]
    public async Task Fetch_NamesTheStatus_WhenSomethingInBetweenAnswers(string type, string body)
    {
        var fault = await RefusalAsync(503, type, body);
        Assert.Equal((HttpStatusCode.ServiceUnavailable, null), (fault.Status, fault.Problem));
        Assert.Equal("The feed answered 503 ServiceUnavailable: no detail given", fault.Message);
    }

    // The second path is the first in other letters; read as references, both name another host.
    [Theory]
    [InlineData("https://api.weather.gov/http://{0}/latest")]
    [InlineData("https://api.weather.gov/%68ttp://{0}/latest")]
    [InlineData("https://api.weather.gov//{0}/latest")]
    [InlineData("https://api.weather.gov/\\{0}/latest")]
    [InlineData("http://{0}/latest")]
    public async Task Fetch_AsksNoOtherHost_WhateverAddressAPointNames(string address)
    {
        await using var other = await ReplayServer.StartAsync(SendFile);
        var named = address.Replace("{0}", other.Address.Authority).Replace("\\", "\\\\");
        var body = $$"""
            {"properties": {"forecastGridData": "{{named}}",
             "forecastHourly": "https://api.weather.gov/gridpoints/ALY/71,67/forecast/hourly"} }
            """;
        await using var server = await ReplayServer.StartAsync(context =>
            context.Request.Path.StartsWithSegments("/points")
                ? ReplayServer.SendAsync(context, 200, GeoJson, Encoding.UTF8.GetBytes(body))
                : ReplayServer.SendAsync(context, 404, Problem, "{}"u8.ToArray()));
        using var feeds = new TestFeeds(server.Address);

        await Assert.ThrowsAsync<FeedRefusedException>(() => FetchAsync(feeds, NwsGridpointFeed.FeedKey, Albany));

        Assert.Empty(other.Requests);
        Assert.Equal(2, server.Requests.Count);
    }

    [Theory]
    [InlineData(NwsGridpointFeed.FeedKey)]
    [InlineData(NwsHourlyFeed.FeedKey)]
    public async Task Fetch_RefusesAForecastOfTheFuture(string key)
    {
        await using var server = await ReplayServer.StartAsync(context => ReplayServer.SendAsync(
            context, 200, GeoJson, Encoding.UTF8.GetBytes(
                Encoding.UTF8.GetString(ReadFile(context)).Replace("2026-04-12T10:27:58", "2126-04-12T10:27:58"))));
        using var feeds = new TestFeeds(server.Address);

        var fault = await Assert.ThrowsAsync<FeedFormatException>(() => FetchAsync(feeds, key, Albany));

        Assert.StartsWith("updateTime '2126-04-12T10:27:58+00:00'", fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{\"properties\": {\"forecastGridData\": \"/%68ttp://example.org/\"}}")]
    [InlineData("{\"properties\": {\"forecastGridData\": \"file:///etc/hostname\"}}")]
    [InlineData("{}")]
    [InlineData("{\"properties\": {\"forecastGridData\": \"somewhere\"}}")]
    [InlineData("{\"properties\": {\"forecastGridData\"")]
    public async Task Fetch_RefusesAPoint_ThatNamesNoForecast(string body)
    {
        await using var server = await ReplayServer.StartAsync(
            context => ReplayServer.SendAsync(context, 200, GeoJson, Encoding.UTF8.GetBytes(body)));
        using var feeds = new TestFeeds(server.Address);
        await Assert.ThrowsAsync<FeedFormatException>(() => FetchAsync(feeds, NwsGridpointFeed.FeedKey, Albany));
    }

    [Theory]
    [InlineData(NwsGridpointFeed.FeedKey)]
    [InlineData(NwsHourlyFeed.FeedKey)]
    public async Task Fetch_RefusesAForecastThatIsCut(string key)
    {
        await using var server = await ReplayServer.StartAsync(context =>
            context.Request.Path.StartsWithSegments("/points")
                ? SendFile(context)
                : ReplayServer.SendAsync(context, 200, GeoJson, ReadFile(context).AsMemory()[..50_000]));
        using var feeds = new TestFeeds(server.Address);
        await Assert.ThrowsAsync<FeedFormatException>(() => FetchAsync(feeds, key, Albany));
    }

    private static async Task<FeedRefusedException> RefusalAsync(int status, string type, string body)
    {
        await using var server = await ReplayServer.StartAsync(
            context => ReplayServer.SendAsync(context, status, type, Encoding.UTF8.GetBytes(body)));
        using var feeds = new TestFeeds(server.Address);
        return await Assert.ThrowsAsync<FeedRefusedException>(
            () => FetchAsync(feeds, NwsGridpointFeed.FeedKey, Albany));
    }

    private static Task<DailyFeedReply> FetchAsync(TestFeeds feeds, string key, DailyFeedRequest request)
    {
        var points = new NwsPoints(feeds.Http, feeds.Options);
        IDailyFeed feed = key == NwsHourlyFeed.FeedKey
            ? new NwsHourlyFeed(feeds.Http, points)
            : new NwsGridpointFeed(feeds.Http, points);
        Assert.Equal((key, FeedKind.Forecasts, true), (feed.Key, feed.Kind, feed.Serves(request.Place)));
        return feed.FetchAsync(request, Cancellation);
    }

    private static Task SendFile(HttpContext context) =>
        ReplayServer.SendAsync(context, 200, GeoJson, ReadFile(context));

    private static byte[] ReadFile(HttpContext context) =>
        File.ReadAllBytes(ProjectFiles.Reference($"feeds/forecast{context.Request.Path}.json"));
}
