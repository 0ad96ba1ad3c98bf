using NodaTime;
using Shouldly;
using Shouldly.Configuration;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Weather;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices;

public sealed class OutageNoticeTests
{
    [Fact]
    public void Outage_ReadsAsApproved()
    {
        var notice = Of(
            Stopped(WeatherFeed.Observations, "Larkspur (USC00200001)", Instant.FromUtc(2026, 1, 22, 0, 0), error: null),
            Stopped(WeatherFeed.Forecasts, "Larkspur (USC00200001)", Now - Duration.FromHours(49), "The feed answered 503."),
            Stopped(WeatherFeed.Alerts, "Larkspur (USC00200001)", Now - Duration.FromHours(4), "The feed answered 503."),
            Stopped(WeatherFeed.Alerts, "Bluff (USC00470001)", newest: null, "The feed answered 404 Not Found."));

        NoticeTextsTests.TextAndHtmlSayTheSame(notice);
        Approve($"Subject: {notice.Subject}\n\n{NoticeText.Of(notice)}", "txt");
        Approve(NoticeHtml.Of(notice), "html");
    }

    [Fact]
    public void Outage_NamesTheFirstTwenty_AndCountsTheOthers()
    {
        var notice = Of([.. Enumerable.Range(1, 23).Select(number =>
            Stopped(WeatherFeed.Forecasts, $"Station {number}", Now - Duration.FromHours(50), error: null))]);

        notice.Subject.ShouldBe("No new forecasts for 23 stations");
        var text = NoticeText.Of(notice);
        text.ShouldContain("Station 20:");
        text.ShouldNotContain("Station 21:");
        text.ShouldContain("And 3 more stations.");
    }

    private static Notice Of(params StoppedFeed[] stopped) => OutageNotice.Of(
        new("Quiet Ridge Consulting", "1 Mill Road, Larkspur, MI 48800"), DateTimeZoneProviders.Tzdb["America/Detroit"], stopped);

    private static StoppedFeed Stopped(WeatherFeed feed, string station, Instant? newest, string? error) => new(
        new()
        {
            StationId = Guid.Empty,
            Feed = feed,
            FirstAttemptAt = Now - Duration.FromDays(3),
            LastAttemptAt = Now,
            NewestAt = newest,
            LastError = error,
        },
        station);

    private static void Approve(string text, string extension) => text.ShouldMatchApproved(options =>
        options.WithFilenameGenerator((_, _, type, _) => $"outage.{type}.{extension}").NoDiff());
}
