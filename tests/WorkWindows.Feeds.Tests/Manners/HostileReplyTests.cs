using System.IO.Compression;
using System.Net;
using Microsoft.AspNetCore.Http;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Manners;
using WorkWindows.Feeds.Tests.Forecasts;

namespace WorkWindows.Feeds.Tests.Manners;

/// <summary>Replies that are cut, slow, endless, packed too well, of another kind, or sent from elsewhere.</summary>
public class HostileReplyTests
{
    private const string TooLarge = "The reply is larger than 2 MB.";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Get_TriesAgain_WhenABodyIsCut()
    {
        await using var server = await ReplayServer.StartAsync(async context =>
        {
            context.Response.ContentLength = 100_000;
            await ReplayServer.SendAsync(context, 200, "application/json", new byte[50_000]);
            await context.Response.Body.FlushAsync();
            context.Abort();
        });
        using var feeds = new TestFeeds(server.Address);

        var fault = await Assert.ThrowsAsync<FeedUnreachableException>(() => GetAsync(feeds, server));

        Assert.StartsWith($"{server.Address.Authority} gave no whole answer", fault.Message, StringComparison.Ordinal);
        Assert.Equal(4, server.Requests.Count);
    }

    [Fact]
    public async Task Get_GivesUp_WhenABodyDoesNotComeInTime()
    {
        TestFeeds? feeds = null;
        await using var server = await ReplayServer.StartAsync(async context =>
        {
            await ReplayServer.SendAsync(context, 200, "application/json", "{"u8.ToArray());
            await context.Response.Body.FlushAsync();
            feeds!.Time.RunOut();
            await Aborted(context);
        });
        using (feeds = new TestFeeds(server.Address, options => options.Retries = 1))
        {
            var fault = await Assert.ThrowsAsync<FeedUnreachableException>(() => GetAsync(feeds, server));
            Assert.Equal($"{server.Address.Authority} gave no whole answer in time.", fault.Message);
        }
        Assert.Equal(2, server.Requests.Count);
    }

    [Fact]
    public async Task Get_StopsReading_WhenABodyDoesNotEnd()
    {
        await using var server = await ReplayServer.StartAsync(async context =>
        {
            context.Response.ContentType = "application/json";
            while (!context.RequestAborted.IsCancellationRequested)
                await context.Response.Body.WriteAsync(new byte[65_536], CancellationToken.None);
        });
        using var feeds = new TestFeeds(server.Address);

        var fault = await Assert.ThrowsAsync<FeedFormatException>(() => GetAsync(feeds, server));

        Assert.Equal(TooLarge, fault.Message);
        Assert.Single(server.Requests);
    }

    [Fact]
    public async Task Get_RefusesABody_ThatIsAnnouncedAsTooLarge()
    {
        await using var server = await ReplayServer.StartAsync(async context =>
        {
            context.Response.ContentLength = 2_000_000_000;
            await ReplayServer.SendAsync(context, 200, "application/json", "{"u8.ToArray());
            await context.Response.Body.FlushAsync();
            await Aborted(context);
        });
        using var feeds = new TestFeeds(server.Address);

        Assert.Equal(TooLarge, (await Assert.ThrowsAsync<FeedFormatException>(() => GetAsync(feeds, server))).Message);
    }

    [Fact]
    public async Task Get_MeasuresAPackedBody_Unpacked()
    {
        var bomb = new MemoryStream();
        using (var packing = new GZipStream(bomb, CompressionLevel.Optimal, leaveOpen: true))
            packing.Write(new byte[50 * 1024 * 1024]);
        await using var server = await ReplayServer.StartAsync(context =>
        {
            context.Response.Headers.ContentEncoding = "gzip";
            return ReplayServer.SendAsync(context, 200, "application/json", bomb.ToArray());
        });
        using var feeds = new TestFeeds(server.Address);

        Assert.True(bomb.Length < 100_000);
        Assert.Equal(TooLarge, (await Assert.ThrowsAsync<FeedFormatException>(() => GetAsync(feeds, server))).Message);
    }

    [Theory]
    [InlineData("text/html", "The reply is 'text/html' and not application/json.")]
    [InlineData(null, "The reply is 'of no type' and not application/json.")]
    public async Task Get_RefusesAnotherContentType(string? type, string message)
    {
        await using var server = await ReplayServer.StartAsync(
            context => ReplayServer.SendAsync(context, 200, type!, "{}"u8.ToArray()));
        using var feeds = new TestFeeds(server.Address);

        Assert.Equal(message, (await Assert.ThrowsAsync<FeedFormatException>(() => GetAsync(feeds, server))).Message);
    }

    [Theory]
    [InlineData(301)]
    [InlineData(302)]
    [InlineData(303)]
    [InlineData(307)]
    [InlineData(308)]
    public async Task Get_FollowsARedirect_OnTheSameHostOnly(int status)
    {
        await using var elsewhere = await ReplayServer.StartAsync(Json);
        await using var server = await ReplayServer.StartAsync(context =>
        {
            if (context.Request.Path == "/new")
                return Json(context);
            context.Response.StatusCode = status;
            context.Response.Headers.Location =
                context.Request.Path == "/away" ? $"{elsewhere.Address}new?key=secret" : "/new";
            return Task.CompletedTask;
        });
        using var feeds = new TestFeeds(server.Address);

        Assert.NotNull((await GetAsync(feeds, server, "old")).Bytes);
        var fault = await Assert.ThrowsAsync<FeedRefusedException>(() => GetAsync(feeds, server, "away"));

        Assert.EndsWith(
            $"redirects to another host, http://{elsewhere.Address.Authority}", fault.Message, StringComparison.Ordinal);
        Assert.Empty(elsewhere.Requests);
    }

    [Fact]
    public async Task Get_CountsRedirects_AndDoesNotRunInCircles()
    {
        await using var server = await ReplayServer.StartAsync(context =>
        {
            context.Response.Redirect("/x");
            return Task.CompletedTask;
        });
        using var feeds = new TestFeeds(server.Address);

        var fault = await Assert.ThrowsAsync<FeedRefusedException>(() => GetAsync(feeds, server));

        Assert.Equal(HttpStatusCode.Found, fault.Status);
        Assert.EndsWith("redirects more than 3 times", fault.Message, StringComparison.Ordinal);
        Assert.Equal(4, server.Requests.Count);
    }

    [Fact]
    public async Task Post_FollowsNoRedirect()
    {
        await using var server = await ReplayServer.StartAsync(context =>
        {
            context.Response.Redirect("/y", permanent: false, preserveMethod: true);
            return Task.CompletedTask;
        });
        using var feeds = new TestFeeds(server.Address);

        await Assert.ThrowsAsync<FeedRefusedException>(
            () => feeds.Http.PostJsonAsync(server.Address, "{}"u8.ToArray(), Cancellation));
        Assert.Single(server.Requests);
    }

    [Fact]
    public async Task Get_SaysThatNobodyAnswers()
    {
        var server = await ReplayServer.StartAsync(Json);
        var address = server.Address;
        await server.DisposeAsync();
        using var feeds = new TestFeeds(address);

        await Assert.ThrowsAsync<FeedUnreachableException>(
            () => feeds.Http.GetAsync(address, FeedHttp.Json, FeedValidators.None, Cancellation));
    }

    private static Task Json(HttpContext context) =>
        ReplayServer.SendAsync(context, 200, "application/json", "{}"u8.ToArray());

    /// <summary>Waits for the client to hang up.</summary>
    private static Task Aborted(HttpContext context)
    {
        var aborted = new TaskCompletionSource();
        context.RequestAborted.Register(aborted.SetResult);
        return aborted.Task;
    }

    private static Task<FeedBody> GetAsync(TestFeeds feeds, ReplayServer server, string path = "x") =>
        feeds.Http.GetAsync(new(server.Address, path), FeedHttp.Json, FeedValidators.None, Cancellation);
}
