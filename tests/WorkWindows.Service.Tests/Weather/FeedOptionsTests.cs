using System.ComponentModel.DataAnnotations;
using Microsoft.Extensions.Options;
using NodaTime;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Manners;
using WorkWindows.Service.Tests.Notices;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Tests;

namespace WorkWindows.Service.Tests.Weather;

public sealed class FeedOptionsTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private const string Someone = "(woods.example.org, office@example.org)";

    [Theory]
    [InlineData(null, "", false)]
    [InlineData(null, Someone, true)]
    [InlineData(false, Someone, false)]
    public void IsEnabled_FollowsTheUserAgent_UnlessSaidOtherwise(bool? enabled, string userAgent, bool expected) =>
        new FeedOptions { Enabled = enabled, UserAgent = userAgent }.IsEnabled.ShouldBe(expected);

    [Theory]
    [InlineData("Enabled", "true",
        "Feeds:Enabled is true, so Feeds:UserAgent must say who asks, with a mail address to write to.")]
    [InlineData("TotalSeconds", "20", "Feeds:TotalSeconds must be at least Feeds:AttemptSeconds.")]
    [InlineData("PlainCsvFiles", "https://woods.example.org/station.csv",
        "Feeds:PlainCsvFiles must be an http or https address in which {station} stands for the station's id.")]
    [InlineData("GhcnFiles", "ftp://example.org/{station}.dly",
        "Feeds:GhcnFiles must be an http or https address in which {station} stands for the station's id.")]
    [InlineData("RequestsADay", "0", "The field RequestsADay must be between 1 and 1000000.")]
    [InlineData("LargestReplyMb", "4096", "The field LargestReplyMb must be between 1 and 256.")]
    public void Start_IsRefused_WithSettingsThatCannotBe(string name, string value, string message)
    {
        using var host = new NoticeHost(
            database, new FakeClock(Instant.FromUtc(2026, 4, 12, 12, 0)), settings: [($"Feeds:{name}", value)]);

        Should.Throw<OptionsValidationException>(
            () => host.Get<IOptions<FeedOptions>>().Value).Message.ShouldContain(message);
    }

    [Fact]
    public void Validate_AcceptsWhatStandsThereByDefault()
    {
        var options = new FeedOptions();
        Validator.TryValidateObject(options, new(options), null, validateAllProperties: true).ShouldBeTrue();
    }

    [Fact]
    public void Services_HaveEveryFeedOnce()
    {
        using var host = new NoticeHost(database, new FakeClock(Instant.FromUtc(2026, 4, 12, 12, 0)));

        host.Get<IEnumerable<IDailyFeed>>().Select(feed => feed.Key).ShouldBe(
            [
                "nws-gridpoint", "nws-hourly", "open-meteo-forecast", "open-meteo-archive", "ncei", "acis", "ghcn-daily",
                "plain-csv",
            ]);
    }

    [Fact]
    public void EveryFeed_HasItsPage()
    {
        using var host = new NoticeHost(database, new FakeClock(Instant.FromUtc(2026, 4, 12, 12, 0)));

        foreach (var feed in host.Get<IEnumerable<IDailyFeed>>())
            File.Exists(Path.Combine(ProjectFiles.Root, "docs", "feeds", $"{feed.Key}.md")).ShouldBeTrue(feed.Key);
    }
}
