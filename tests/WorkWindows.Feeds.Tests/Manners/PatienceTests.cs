using System.Net;
using Microsoft.AspNetCore.Http;
using NodaTime;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Manners;
using WorkWindows.Feeds.Tests.Forecasts;

namespace WorkWindows.Feeds.Tests.Manners;

/// <summary>How a server is treated that refuses, or asks to be left alone.</summary>
public class PatienceTests
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Get_TriesAgain_AfterLongerAndLongerPauses()
    {
        var left = 3;
        await using var server = await ReplayServer.StartAsync(context => Answer(context, left-- > 0 ? 500 : 200));
        using var feeds = new TestFeeds(server.Address);

        Assert.NotNull((await GetAsync(feeds, server)).Bytes);

        Assert.Equal(4, server.Requests.Count);
        Assert.Equal(3, feeds.Time.Pauses.Count);
        Assert.All(feeds.Time.Pauses, pause => Assert.True(pause > TimeSpan.Zero));
        Assert.Equal(3, feeds.Time.Pauses.Distinct().Count());
    }

    [Fact]
    public async Task Get_PausesAsLongAsTheServerAsks()
    {
        var left = 1;
        await using var server = await ReplayServer.StartAsync(context =>
        {
            context.Response.Headers.RetryAfter = "7";
            return Answer(context, left-- > 0 ? 503 : 200);
        });
        using var feeds = new TestFeeds(server.Address);

        await GetAsync(feeds, server);

        Assert.Equal([TimeSpan.FromSeconds(7)], feeds.Time.Pauses);
    }

    [Theory]
    [InlineData("3600")]
    [InlineData("Sun, 12 Apr 2026 13:00:00 GMT")]
    public async Task Get_LeavesTheHostAlone_WhenItAsksForMoreThanAPause(string retryAfter)
    {
        var status = 429;
        await using var server = await ReplayServer.StartAsync(context =>
        {
            context.Response.Headers.RetryAfter = retryAfter;
            return Answer(context, status);
        });
        using var feeds = new TestFeeds(server.Address);

        var refusal = await Assert.ThrowsAsync<FeedRefusedException>(() => GetAsync(feeds, server));
        feeds.Clock.AdvanceMinutes(59);
        var waiting = await Assert.ThrowsAsync<FeedUnreachableException>(() => GetAsync(feeds, server, "y"));

        Assert.Equal((HttpStatusCode.TooManyRequests, Duration.FromHours(1)), (refusal.Status, refusal.RetryAfter));
        Assert.Equal(Duration.FromMinutes(1), waiting.RetryAfter);
        Assert.Equal($"{server.Address.Authority} asked to be left alone and is not asked.", waiting.Message);
        Assert.Single(server.Requests);

        status = 200;
        feeds.Clock.AdvanceMinutes(1);
        Assert.NotNull((await GetAsync(feeds, server)).Bytes);
    }

    [Theory]
    [InlineData(500, 4)]
    [InlineData(503, 4)]
    [InlineData(429, 4)]
    [InlineData(400, 1)]
    [InlineData(403, 1)]
    [InlineData(404, 1)]
    public async Task Get_GivesUp_AndTriesAgainOnlyWhatMayPass(int status, int requests)
    {
        await using var server = await ReplayServer.StartAsync(context => Answer(context, status));
        using var feeds = new TestFeeds(server.Address);

        var refusal = await Assert.ThrowsAsync<FeedRefusedException>(() => GetAsync(feeds, server));

        Assert.Equal(status, (int)refusal.Status);
        Assert.Equal(requests, server.Requests.Count);
    }

    [Fact]
    public async Task Get_LeavesAHostAlone_OfWhichEveryAttemptFails()
    {
        var status = 500;
        await using var server = await ReplayServer.StartAsync(context => Answer(context, status));
        using var feeds = new TestFeeds(server.Address, options => options.AttemptsBeforeBreak = 4);

        await Assert.ThrowsAsync<FeedRefusedException>(() => GetAsync(feeds, server));
        var fault = await Assert.ThrowsAsync<FeedUnreachableException>(() => GetAsync(feeds, server, "y"));
        Assert.EndsWith("failed so often that it is left alone for a while.", fault.Message, StringComparison.Ordinal);
        Assert.Equal(4, server.Requests.Count);

        status = 200;
        feeds.Time.Now += TimeSpan.FromSeconds(301);
        Assert.NotNull((await GetAsync(feeds, server)).Bytes);
    }

    [Fact]
    public async Task Get_SendsAHostOneRequestAtATime()
    {
        var (now, most) = (0, 0);
        await using var server = await ReplayServer.StartAsync(async context =>
        {
            most = Math.Max(most, Interlocked.Increment(ref now));
            await Task.Yield();
            await Answer(context, 200);
            Interlocked.Decrement(ref now);
        });
        using var feeds = new TestFeeds(server.Address);

        await Task.WhenAll(Enumerable.Range(0, 20).Select(page => GetAsync(feeds, server, $"{page}")));

        Assert.Equal((20, 1), (server.Requests.Count, most));
    }

    [Fact]
    public async Task Get_StopsForTheDay_WhenItsRequestsAreUsedUp()
    {
        await using var server = await ReplayServer.StartAsync(
            context => Answer(context, context.Request.Path == "/bad" ? 500 : 200));
        using var feeds = new TestFeeds(server.Address, options => options.RequestsADay = 5);

        await Assert.ThrowsAsync<FeedRefusedException>(() => GetAsync(feeds, server, "bad"));
        await GetAsync(feeds, server);
        var fault = await Assert.ThrowsAsync<FeedBudgetException>(() => GetAsync(feeds, server));

        Assert.Equal($"{server.Address.Authority} has been sent its 5 requests of this UTC day.", fault.Message);
        Assert.Equal(Duration.FromHours(12), fault.RetryAfter);
        Assert.Equal(5, server.Requests.Count);
        feeds.Clock.AdvanceHours(12);
        await GetAsync(feeds, server);
    }

    [Fact]
    public async Task Get_EndsWhenTheCallerEnds()
    {
        using var caller = new CancellationTokenSource();
        await using var server = await ReplayServer.StartAsync(async context =>
        {
            await caller.CancelAsync();
            var aborted = new TaskCompletionSource();
            context.RequestAborted.Register(aborted.SetResult);
            await aborted.Task;
        });
        using var feeds = new TestFeeds(server.Address);

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => feeds.Http.GetAsync(
            server.Address, FeedHttp.Json, FeedValidators.None, caller.Token));
    }

    private static Task Answer(HttpContext context, int status) =>
        ReplayServer.SendAsync(context, status, "application/json", "{}"u8.ToArray());

    private static Task<FeedBody> GetAsync(TestFeeds feeds, ReplayServer server, string path = "x") =>
        feeds.Http.GetAsync(new(server.Address, path), FeedHttp.Json, FeedValidators.None, Cancellation);
}
