using Microsoft.AspNetCore.Http;
using NodaTime;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Manners;
using WorkWindows.Feeds.Tests.Forecasts;

namespace WorkWindows.Feeds.Tests.Manners;

/// <summary>What is fresh is not asked for again, and what is old only whether it has changed (RFC 9111).</summary>
public class FreshnessTests
{
    private const string Modified = "Sun, 12 Apr 2026 10:30:00 GMT";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Get_SaysWhoAsks_AndForWhat()
    {
        var accept = "";
        await using var server = await ReplayServer.StartAsync(context =>
        {
            accept = $"{context.Request.Headers.Accept}";
            return Json(context);
        });
        using var feeds = new TestFeeds(server.Address);

        await GetAsync(feeds, server);

        Assert.Equal([("/x", TestFeeds.UserAgent)], server.Requests);
        Assert.Equal("application/json", accept);
    }

    [Fact]
    public async Task Get_DoesNotAskAgain_WhileTheReplyIsFresh()
    {
        var known = new List<string>();
        await using var server = await ReplayServer.StartAsync(context =>
        {
            known.Add($"{context.Request.Headers.IfNoneMatch} {context.Request.Headers.IfModifiedSince}");
            context.Response.Headers.CacheControl = "public, max-age=60";
            context.Response.Headers.Date = "Sun, 12 Apr 2026 12:00:00 GMT";
            context.Response.Headers.ETag = "\"v1\"";
            context.Response.Headers.LastModified = Modified;
            context.Response.StatusCode = context.Request.Headers.IfNoneMatch.Count > 0 ? 304 : 200;
            return context.Response.StatusCode == 304 ? Task.CompletedTask : Json(context);
        });
        using var feeds = new TestFeeds(server.Address);

        var first = await GetAsync(feeds, server);
        feeds.Clock.AdvanceSeconds(59);
        var fresh = await GetAsync(feeds, server);
        feeds.Clock.AdvanceSeconds(2);
        var checkedAgain = await GetAsync(feeds, server);
        feeds.Clock.AdvanceSeconds(59);
        var freshAgain = await GetAsync(feeds, server);

        Assert.Equal([" ", $"\"v1\" {Modified}"], known);
        Assert.All(
            [fresh, checkedAgain, freshAgain], body => Assert.Equal("{}"u8.ToArray(), body.Bytes!.Value.ToArray()));
        Assert.Equal(first.AnsweredAt, fresh.AnsweredAt);
        Assert.Equal(Instant.FromUtc(2026, 4, 12, 12, 1), fresh.FreshUntil);
    }

    [Fact]
    public async Task Get_SaysThatNothingChanged_WithTheValidatorsOfTheReplyBefore()
    {
        await using var server = await ReplayServer.StartAsync(context =>
        {
            context.Response.Headers.CacheControl = "max-age=600";
            context.Response.Headers.ETag = "W/\"v1\"";
            if (context.Request.Headers.IfNoneMatch != "W/\"v1\"" || context.Request.Headers.IfModifiedSince != Modified)
                return Json(context);
            context.Response.StatusCode = 304;
            return Task.CompletedTask;
        });
        // A process that has just started and knows the reply from its database.
        using var feeds = new TestFeeds(server.Address);
        var before = new FeedValidators("W/\"v1\"", Modified);

        var body = await GetAsync(feeds, server, before);

        Assert.Null(body.Bytes);
        Assert.Equal(before, body.Validators);
        Assert.Equal(Instant.FromUtc(2026, 4, 12, 12, 10), body.FreshUntil);
    }

    [Fact]
    public async Task Get_SaysThatNothingChanged_WithoutAsking_WhenTheFreshReplyIsTheOneBefore()
    {
        await using var server = await ReplayServer.StartAsync(context =>
        {
            context.Response.Headers.CacheControl = "max-age=60";
            context.Response.Headers.ETag = "\"v1\"";
            return Json(context);
        });
        using var feeds = new TestFeeds(server.Address);

        var first = await GetAsync(feeds, server);
        Assert.Null((await GetAsync(feeds, server, first.Validators)).Bytes);
        Assert.NotNull((await GetAsync(feeds, server, new("\"v0\"", null))).Bytes);
        Assert.Single(server.Requests);
    }

    [Theory]
    [InlineData("no-store, max-age=60", null, 2)]
    [InlineData("no-cache", null, 2)]
    [InlineData(null, null, 2)]
    [InlineData(null, "Sun, 12 Apr 2026 12:01:00 GMT", 1)]
    [InlineData(null, "Sun, 12 Apr 2026 11:59:00 GMT", 2)]
    [InlineData("max-age=60", "Sun, 12 Apr 2026 11:59:00 GMT", 1)]      // max-age wins
    public async Task Get_HoldsToWhatTheServerSaysOfAge(string? control, string? expires, int requests)
    {
        await using var server = await ReplayServer.StartAsync(context =>
        {
            context.Response.Headers.CacheControl = control;
            context.Response.Headers.Expires = expires;
            context.Response.Headers.Date = "Sun, 12 Apr 2026 12:00:00 GMT";
            return Json(context);
        });
        using var feeds = new TestFeeds(server.Address);

        await GetAsync(feeds, server);
        await GetAsync(feeds, server);

        Assert.Equal(requests, server.Requests.Count);
    }

    [Theory]
    [InlineData("max-age=99999999999999", null)]
    [InlineData("max-age=2147483647", null)]
    [InlineData(null, "Fri, 31 Dec 9999 23:59:59 GMT")]
    public async Task Get_TrustsNoReplyForMoreThanAWeek(string? control, string? expires)
    {
        await using var server = await ReplayServer.StartAsync(context =>
        {
            context.Response.Headers.CacheControl = control;
            context.Response.Headers.Expires = expires;
            context.Response.Headers.Date = "Sun, 12 Apr 2026 12:00:00 GMT";
            return Json(context);
        });
        using var feeds = new TestFeeds(server.Address);

        var body = await GetAsync(feeds, server);

        Assert.True(body.FreshUntil is null || body.FreshUntil == Instant.FromUtc(2026, 4, 19, 12, 0));
    }

    [Fact]
    public async Task Get_DoesNotBelieveAServer_WhoseClockIsAhead()
    {
        await using var server = await ReplayServer.StartAsync(context =>
        {
            context.Response.Headers.Date = "Mon, 12 Apr 2027 12:00:00 GMT";
            return Json(context);
        });
        using var feeds = new TestFeeds(server.Address);

        Assert.Equal(feeds.Clock.GetCurrentInstant(), (await GetAsync(feeds, server)).AnsweredAt);
    }

    [Fact]
    public async Task Get_RefusesToHearThatNothingChanged_WhenNothingWasKnown()
    {
        await using var server = await ReplayServer.StartAsync(context =>
        {
            context.Response.StatusCode = 304;
            return Task.CompletedTask;
        });
        using var feeds = new TestFeeds(server.Address);

        await Assert.ThrowsAsync<FeedFormatException>(() => GetAsync(feeds, server));
    }

    [Fact]
    public async Task Get_ForgetsTheOldestReplies_WhenThereAreTooMany()
    {
        await using var server = await ReplayServer.StartAsync(context =>
        {
            context.Response.Headers.CacheControl = "max-age=600";
            return ReplayServer.SendAsync(context, 200, "application/json", new byte[700_000]);
        });
        using var feeds = new TestFeeds(server.Address, options => options.KeptRepliesMb = 1);

        foreach (var path in (string[])["a", "b", "b", "a"])
            await feeds.Http.GetAsync(new(server.Address, path), FeedHttp.Json, FeedValidators.None, Cancellation);

        Assert.Equal(["/a", "/b", "/a"], server.Requests.Select(request => request.Path));
    }

    private static Task Json(HttpContext context) =>
        ReplayServer.SendAsync(context, 200, "application/json", "{}"u8.ToArray());

    private static Task<FeedBody> GetAsync(TestFeeds feeds, ReplayServer server, FeedValidators? before = null) =>
        feeds.Http.GetAsync(new(server.Address, "x"), FeedHttp.Json, before ?? FeedValidators.None, Cancellation);
}
