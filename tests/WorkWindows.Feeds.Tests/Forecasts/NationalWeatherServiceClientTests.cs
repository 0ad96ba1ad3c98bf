using System.Net;
using System.Text;
using Microsoft.AspNetCore.Http;
using NodaTime;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Forecasts;

namespace WorkWindows.Feeds.Tests.Forecasts;

public class NationalWeatherServiceClientTests
{
    private const string GeoJson = "application/geo+json";
    private const string UserAgent = "(woods.example.org, office@example.org)";

    private static readonly DateTimeZone NewYork = DateTimeZoneProviders.Tzdb["America/New_York"];
    private static readonly Gridpoint Albany =
        new(new("https://api.weather.gov/gridpoints/ALY/71,67"), "America/New_York");

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Client_FollowsThePointToItsForecast_OnTheBaseAddress()
    {
        await using var server = await ReplayServer.StartAsync(context => ReplayServer.SendAsync(
            context, 200, GeoJson,
            File.ReadAllBytes(ProjectFiles.Reference($"feeds/forecast{context.Request.Path}.json"))));
        using var http = new HttpClient();
        var client = Client(http, server);

        var gridpoint = await client.FindGridpointAsync(42.74500004, -73.752, Cancellation);
        var reply = await client.GetForecastAsync(gridpoint, NewYork, null, Cancellation);

        Assert.Equal("America/New_York", gridpoint.TimeZone);
        Assert.Equal(Instant.FromUtc(2026, 4, 12, 10, 27, 58), reply.Forecast!.IssuedAt);
        Assert.Equal(
            [("/points/42.745,-73.752", UserAgent), ("/gridpoints/ALY/71,67", UserAgent)], server.Requests);
    }

    [Fact]
    public async Task GetForecast_SaysThatNothingIsNewer_When304()
    {
        var modified = Instant.FromUtc(2026, 4, 12, 10, 30);
        await using var server = await ReplayServer.StartAsync(context =>
        {
            if (context.Request.GetTypedHeaders().IfModifiedSince == modified.ToDateTimeOffset())
            {
                context.Response.StatusCode = StatusCodes.Status304NotModified;
                return Task.CompletedTask;
            }
            context.Response.GetTypedHeaders().LastModified = modified.ToDateTimeOffset();
            return ReplayServer.SendAsync(context, 200, GeoJson, AlbanyJson());
        });
        using var http = new HttpClient();
        var client = Client(http, server);

        var first = await client.GetForecastAsync(Albany, NewYork, null, Cancellation);
        var second = await client.GetForecastAsync(Albany, NewYork, first.LastModified, Cancellation);

        Assert.Equal(modified, first.LastModified);
        Assert.Equal(new ForecastReply(null, modified), second);
    }

    [Fact]
    public async Task FindGridpoint_NamesTheProblem_WhenThePointIsUnknown()
    {
        var fault = await RefusalAsync(404, "application/problem+json", """
            {"correlationId": "1", "title": "Data Unavailable For Requested Point",
             "type": "https://api.weather.gov/problems/InvalidPoint", "status": 404,
             "detail": "Unable to provide data for requested point 40,-60"}
            """);
        Assert.Equal((HttpStatusCode.NotFound, "InvalidPoint"), (fault.Status, fault.Problem));
        Assert.Equal(
            "The feed answered 404 Data Unavailable For Requested Point: Unable to provide data for "
            + "requested point 40,-60", fault.Message);
    }

    [Theory]
    [InlineData("application/problem+json", "{\"type\": \"https://api.weather.gov/problems/ForecastGridExpired\"}",
        "ForecastGridExpired")]
    [InlineData("text/html", "<html>Service Unavailable</html>", null)]
    [InlineData("text/plain", "", null)]
    public async Task Client_NamesTheStatus_WhenTheServiceIsUnavailable(string type, string body, string? problem)
    {
        var fault = await RefusalAsync(503, type, body);
        Assert.Equal((HttpStatusCode.ServiceUnavailable, problem), (fault.Status, fault.Problem));
    }

    [Fact]
    public async Task GetForecast_RefusesABodyThatIsCut()
    {
        await using var server = await ReplayServer.StartAsync(
            context => ReplayServer.SendAsync(context, 200, GeoJson, AlbanyJson().AsMemory()[..50_000]));
        using var http = new HttpClient();
        await Assert.ThrowsAsync<FeedFormatException>(
            () => Client(http, server).GetForecastAsync(Albany, NewYork, null, Cancellation));
    }

    [Fact]
    public async Task GetForecast_LetsAConnectionFaultFly_WhenItEndsEarly()
    {
        await using var server = await ReplayServer.StartAsync(async context =>
        {
            context.Response.ContentLength = 190_000;
            await ReplayServer.SendAsync(context, 200, GeoJson, AlbanyJson().AsMemory()[..50_000]);
            await context.Response.Body.FlushAsync();
            context.Abort();
        });
        using var http = new HttpClient();
        await Assert.ThrowsAsync<HttpRequestException>(
            () => Client(http, server).GetForecastAsync(Albany, NewYork, null, Cancellation));
    }

    [Fact]
    public async Task GetForecast_RefusesAnotherContentType()
    {
        await using var server = await ReplayServer.StartAsync(
            context => ReplayServer.SendAsync(context, 200, "text/html", AlbanyJson()));
        using var http = new HttpClient();
        var fault = await Assert.ThrowsAsync<FeedFormatException>(
            () => Client(http, server).GetForecastAsync(Albany, NewYork, null, Cancellation));
        Assert.Equal("The reply is 'text/html' and not JSON.", fault.Message);
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("{\"properties\": {\"forecastGridData\": \"somewhere\", \"timeZone\": \"America/Detroit\"}}")]
    [InlineData("{\"properties\": {\"forecastGridData\"")]
    public async Task FindGridpoint_RefusesAReplyThatNamesNoForecast(string body)
    {
        await using var server = await ReplayServer.StartAsync(
            context => ReplayServer.SendAsync(context, 200, GeoJson, Encoding.UTF8.GetBytes(body)));
        using var http = new HttpClient();
        await Assert.ThrowsAsync<FeedFormatException>(
            () => Client(http, server).FindGridpointAsync(42.7, -73.7, Cancellation));
    }

    [Fact]
    public async Task GetAlerts_AsksForThePoint_AndSaysWhoAsks()
    {
        var point = "";
        await using var server = await ReplayServer.StartAsync(context =>
        {
            point = $"{context.Request.QueryString}";
            return ReplayServer.SendAsync(context, 200, GeoJson,
                File.ReadAllBytes(ProjectFiles.Reference("feeds/forecast/alerts/air-quality.json")));
        });
        using var http = new HttpClient();

        var alerts = await Client(http, server).GetAlertsAsync(42.74500004, -73.752, Cancellation);

        Assert.NotEmpty(alerts);
        Assert.Equal("?point=42.745,-73.752", point);
        Assert.Equal([("/alerts/active", UserAgent)], server.Requests);
    }

    [Theory]
    [InlineData(200, "text/html", "<html></html>")]
    [InlineData(200, GeoJson, "{\"features\": [")]
    [InlineData(200, GeoJson, "")]
    public async Task GetAlerts_RefusesAReplyThatIsNoneOrCut(int status, string type, string body) =>
        await Assert.ThrowsAsync<FeedFormatException>(() => AlertsAsync(status, type, body));

    [Theory]
    [InlineData(400, "application/problem+json", "{\"title\": \"Invalid Parameter\"}")]
    [InlineData(503, "text/html", "<html>Service Unavailable</html>")]
    public async Task GetAlerts_NamesTheStatus_WhenTheServiceRefuses(int status, string type, string body)
    {
        var fault = await Assert.ThrowsAsync<FeedRefusedException>(() => AlertsAsync(status, type, body));
        Assert.Equal(status, (int?)fault.Status);
    }

    [Theory]
    [InlineData("")]
    [InlineData(" ")]
    public void Client_RefusesToAskWithoutSayingWhoAsks(string userAgent)
    {
        using var http = new HttpClient();
        var fault = Assert.Throws<ArgumentException>(
            () => new NationalWeatherServiceClient(http, new() { UserAgent = userAgent }));
        Assert.StartsWith("The weather service needs a user agent", fault.Message, StringComparison.Ordinal);
    }

    private static async Task<FeedRefusedException> RefusalAsync(int status, string type, string body)
    {
        await using var server = await ReplayServer.StartAsync(
            context => ReplayServer.SendAsync(context, status, type, Encoding.UTF8.GetBytes(body)));
        using var http = new HttpClient();
        return await Assert.ThrowsAsync<FeedRefusedException>(
            () => Client(http, server).FindGridpointAsync(40, -60, Cancellation));
    }

    private static async Task AlertsAsync(int status, string type, string body)
    {
        await using var server = await ReplayServer.StartAsync(
            context => ReplayServer.SendAsync(context, status, type, Encoding.UTF8.GetBytes(body)));
        using var http = new HttpClient();
        await Client(http, server).GetAlertsAsync(42.745, -73.752, Cancellation);
    }

    private static byte[] AlbanyJson() =>
        File.ReadAllBytes(ProjectFiles.Reference("feeds/forecast/gridpoints/ALY/71,67.json"));

    private static NationalWeatherServiceClient Client(HttpClient http, ReplayServer server) =>
        new(http, new() { BaseAddress = server.Address, UserAgent = UserAgent });
}
