using System.Text;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Stations;
using WorkWindows.Feeds.Tests.Forecasts;
using WorkWindows.Feeds.Tests.Manners;

namespace WorkWindows.Feeds.Tests.Stations;

public class StationFileFeedTests
{
    private const string Minneapolis = "USW00014922";

    private static readonly DailyFeedRequest Winter = TestFeeds.Request(
        new(1999, 1, 1), new(1999, 1, 31), "America/Chicago", Minneapolis);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Fetch_GivesTheDaysAskedFor_OfAPackedStationFile_AndThenSaysThatNothingChanged()
    {
        await using var server = await ReplayServer.StartAsync(context =>
        {
            context.Response.Headers.ETag = "\"7654\"";
            if (context.Request.Headers.IfNoneMatch == "\"7654\"")
            {
                context.Response.StatusCode = 304;
                return Task.CompletedTask;
            }
            return ReplayServer.SendAsync(context, 200, "application/x-gzip",
                File.ReadAllBytes(ProjectFiles.Reference("stations/dly/USW00014922.full.dly.gz")));
        });
        using var feeds = new TestFeeds(server.Address);
        var feed = Ghcn(feeds);

        var first = Assert.IsType<DailyFeedReply.Observed>(await feed.FetchAsync(Winter, Cancellation));
        var second = await feed.FetchAsync(Winter with { Before = first.Validators }, Cancellation);

        Assert.Equal("/ghcn/USW00014922", server.Requests[0].Path);
        Assert.Equal(31, first.Readings.Count(reading => reading.Element == DailyElement.MinTemperatureC));
        Assert.All(first.Readings, reading => Assert.True(Winter.Days.Contains(reading.Date)));
        Assert.IsType<DailyFeedReply.NotModified>(second);
    }

    [Fact]
    public async Task Fetch_ReadsAFileOfOnesOwn()
    {
        await using var server = await ReplayServer.StartAsync(context => ReplayServer.SendAsync(
            context, 200, "text/csv", "date,minTemperature [degF]\n1999-01-01,20\n1999-02-01,21\n"u8.ToArray()));
        using var feeds = new TestFeeds(server.Address);
        var feed = new StationFileFeed(StationFileFeed.Plain, feeds.Options.Value.PlainCsvFiles, feeds.Http);

        var reply = Assert.IsType<DailyFeedReply.Observed>(await feed.FetchAsync(Winter, Cancellation));

        Assert.Equal("/plain/USW00014922.csv", server.Requests.Single().Path);
        Assert.Equal(
            [new DailyReading(new(1999, 1, 1), DailyElement.MinTemperatureC, -6.666666667, null)], reply.Readings);
    }

    [Theory]
    [InlineData(
        "USC00368449,20040201,TMIN,-144,,,0,0700\n", "The file is of station USC00368449 and not of USW00014922.")]
    [InlineData("USW00014922,20040230,TMIN,-144,,,0,0700\n",
        "The station file cannot be used. line 1: date '20040230': an existing date as YYYYMMDD, 1700 to 2200")]
    public async Task Fetch_RefusesAFileThatIsWrong(string file, string message)
    {
        await using var server = await ReplayServer.StartAsync(
            context => ReplayServer.SendAsync(context, 200, "text/csv", Encoding.ASCII.GetBytes(file)));
        using var feeds = new TestFeeds(server.Address);

        var fault = await Assert.ThrowsAsync<FeedFormatException>(() => Ghcn(feeds).FetchAsync(Winter, Cancellation));
        Assert.Equal(message, fault.Message);
    }

    [Fact]
    public void Serves_OnlyStations_AndOnlyWhereFilesLie()
    {
        using var feeds = new TestFeeds(new("http://127.0.0.1:9/"));
        Assert.True(Ghcn(feeds).Serves(Winter.Place));
        Assert.False(Ghcn(feeds).Serves(Winter.Place with { GhcnId = null }));
        Assert.False(new StationFileFeed(StationFileFeed.Plain, "", feeds.Http).Serves(Winter.Place));
    }

    private static StationFileFeed Ghcn(TestFeeds feeds) =>
        new(StationFileFeed.Ghcn, feeds.Options.Value.GhcnFiles, feeds.Http);
}
