using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Alerts;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Forecasts;

namespace WorkWindows.Feeds.Tests.Alerts;

/// <summary>Payloads of the service (CC0; the last one MIT, MatthewFlamm/pynws), read by eye.</summary>
public class RealAlertsTests
{
    private static readonly DateTimeZone Chicago = DateTimeZoneProviders.Tzdb["America/Chicago"];

    [Fact]
    public void Read_TakesTheFewAlertsThatRulesKnow_OfAWholeCountry()
    {
        // 396 alerts, of which 11 red flag warnings, 2 fire weather watches, 2 severe thunderstorm warnings and a wind
        // advisory; some of them are in force at the same times and count once.
        var alerts = ActiveAlerts.Read(Payload("forecast/alerts/air-quality.json"));
        Assert.Equal(
            ["Fire Weather Watch", "Red Flag Warning", "Severe Thunderstorm Warning", "Wind Advisory"],
            alerts.Select(alert => alert.Event).Distinct().Order(StringComparer.Ordinal));
        Assert.Equal(alerts.Distinct(), alerts);
        // "onset": "2026-04-12T11:51:16+00:00", "expires" and "ends": "2026-04-12T12:29:15+00:00"
        Assert.Contains(
            new ActiveAlert(AlertKind.Thunderstorm, "Severe Thunderstorm Warning",
                Instant.FromUtc(2026, 4, 12, 11, 51, 16), Instant.FromUtc(2026, 4, 12, 12, 29, 15)),
            alerts);
        Assert.All(alerts, alert => Assert.True(alert.StartsAt <= alert.EndsAt, $"{alert}"));
    }

    [Fact]
    public void Read_FailsOverOneBlizzardWarning_WhoseTimesWereNeverFilledIn()
    {
        // "onset": "date:today 16:00:-5 +24 hours"
        var fault = Assert.Throws<FeedFormatException>(
            () => ActiveAlerts.Read(Payload("forecast/alerts/many-kinds.json")));
        Assert.Contains("features[5] Blizzard Warning.onset 'date:today", fault.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("features[6]", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_GivesNothing_OfAFloodWatchAlone() =>
        Assert.Empty(ActiveAlerts.Read(Payload("forecast-units/alerts_active_zone.json")));

    [Fact]
    public void InZone_PutsAWatchOnTheDayThatItIsFor()
    {
        // With the times of the Blizzard Warning filled in. A watch of the same payload:
        // "sent": "2026-04-12T10:58:52+00:00", "onset": "2026-04-13T09:18:51+00:00", "ends": "2026-04-13T19:18:51+…"
        var text = File.ReadAllText(ProjectFiles.Reference("feeds/forecast/alerts/many-kinds.json"));
        foreach (var (given, hour) in new[] { ("+24", "21"), ("+40", "22"), ("+48", "23") })
            text = text.Replace($"date:today 16:00:-5 {given} hours", $"2026-04-13T{hour}:00:00+00:00");
        var alerts = ActiveAlerts.Read(System.Text.Encoding.UTF8.GetBytes(text)).Select(alert => alert.InZone(Chicago));
        Assert.Contains(
            new WeatherAlert(AlertKind.RedFlag, "Fire Weather Watch", new(2026, 4, 13), new(2026, 4, 13)), alerts);
        Assert.Contains(
            new WeatherAlert(AlertKind.WinterStorm, "Blizzard Warning", new(2026, 4, 13), new(2026, 4, 13)), alerts);
    }

    private static byte[] Payload(string path) => File.ReadAllBytes(ProjectFiles.Reference($"feeds/{path}"));
}
