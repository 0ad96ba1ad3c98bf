using System.Text;
using WorkWindows.Feeds.Alerts;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Tests.Forecasts;
using WorkWindows.Feeds.Tests.Manners;

namespace WorkWindows.Feeds.Tests.Alerts;

public class AlertFeedTests
{
    private const string GeoJson = "application/geo+json";

    private static readonly FeedPlace Albany = new(null, 42.74500004, -73.752, null);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Fetch_AsksForThePoint_AndSaysWhoAsks()
    {
        var point = "";
        await using var server = await ReplayServer.StartAsync(context =>
        {
            point = $"{context.Request.QueryString}";
            return ReplayServer.SendAsync(context, 200, GeoJson,
                File.ReadAllBytes(ProjectFiles.Reference("feeds/forecast/alerts/air-quality.json")));
        });
        using var feeds = new TestFeeds(server.Address);

        var alerts = await new AlertFeed(feeds.Http, feeds.Options).FetchAsync(Albany, Cancellation);

        Assert.NotEmpty(alerts);
        Assert.Equal("?point=42.745,-73.752", point);
        Assert.Equal([("/alerts/active", TestFeeds.UserAgent)], server.Requests);
    }

    /// <summary>Alerts are old after hours, and a server may call its word fresh for days.</summary>
    [Fact]
    public async Task Fetch_HasTheServiceConfirmItsWord_HoweverFreshItIsCalled()
    {
        var known = new List<string>();
        var version = 1;
        await using var server = await ReplayServer.StartAsync(context =>
        {
            known.Add($"{context.Request.Headers.IfNoneMatch} {context.Request.Headers.CacheControl}");
            context.Response.Headers.CacheControl = "public, max-age=604800";
            context.Response.Headers.ETag = $"\"v{version}\"";
            if (context.Request.Headers.IfNoneMatch != $"\"v{version}\"")
                return ReplayServer.SendAsync(context, 200, GeoJson, Alerts(version));
            context.Response.StatusCode = 304;
            return Task.CompletedTask;
        });
        using var feeds = new TestFeeds(server.Address);

        Assert.Empty(await FetchAsync());
        Assert.Empty(await FetchAsync());
        version = 2;
        Assert.Single(await FetchAsync());

        Assert.Equal([" no-cache", "\"v1\" no-cache", "\"v1\" no-cache"], known);

        async Task<IReadOnlyList<ActiveAlert>> FetchAsync() =>
            await new AlertFeed(feeds.Http, feeds.Options).FetchAsync(Albany, Cancellation);
    }

    [Theory]
    [InlineData("text/html", "<html></html>")]
    [InlineData(GeoJson, "{\"features\": [")]
    [InlineData(GeoJson, "")]
    public Task Fetch_RefusesAReplyThatIsNoneOrCut(string type, string body) =>
        Assert.ThrowsAsync<FeedFormatException>(() => FetchAsync(200, type, body));

    [Theory]
    [InlineData(400, "application/problem+json", "{\"title\": \"Invalid Parameter\"}")]
    [InlineData(503, "text/html", "<html>Service Unavailable</html>")]
    public async Task Fetch_NamesTheStatus_WhenTheServiceRefuses(int status, string type, string body)
    {
        var fault = await Assert.ThrowsAsync<FeedRefusedException>(() => FetchAsync(status, type, body));
        Assert.Equal(status, (int)fault.Status);
    }

    private static ReadOnlyMemory<byte> Alerts(int version) =>
        version == 1 ? AlertJson.Payload() : AlertJson.Payload(AlertJson.Feature());

    private static async Task FetchAsync(int status, string type, string body)
    {
        await using var server = await ReplayServer.StartAsync(
            context => ReplayServer.SendAsync(context, status, type, Encoding.UTF8.GetBytes(body)));
        using var feeds = new TestFeeds(server.Address);
        await new AlertFeed(feeds.Http, feeds.Options).FetchAsync(Albany, Cancellation);
    }
}
