using System.Collections.Immutable;
using System.Text;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Alerts;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Forecasts;
using static WorkWindows.Feeds.Tests.Alerts.AlertJson;

namespace WorkWindows.Feeds.Tests.Alerts;

public class ActiveAlertsTests
{
    private static readonly Instant Eleven = Instant.FromUtc(2026, 4, 12, 11, 0);

    [Fact]
    public void Read_TakesOnsetAndEnd() =>
        Assert.Equal(
            [new ActiveAlert(AlertKind.RedFlag, "Red Flag Warning", Eleven, Instant.FromUtc(2026, 4, 12, 15, 0))],
            Read(Feature()));

    [Theory]
    [InlineData("null", null, 8)]
    [InlineData(null, null, 8)]
    [InlineData("\"2026-04-12T07:30:00-04:00\"", "not a time", 11.5)]     // effective is not asked for
    public void Read_BeginsWhenEffective_WithoutAnOnset(string? onset, string? effective, double hour)
    {
        var changes = new List<(string, string?)> { ("onset", onset) };
        if (effective is not null)
            changes.Add(("effective", Quoted(effective)));
        Assert.Equal(
            Instant.FromUtc(2026, 4, 12, 0, 0) + Duration.FromHours(hour), Read(Feature(changes)).Single().StartsAt);
    }

    [Theory]
    [InlineData("2026-04-12T13:00:00+00:00", 13)]
    // The message runs out before the hazard begins and is renewed until then.
    [InlineData("2026-04-12T09:00:00+00:00", 11)]
    public void Read_EndsWhenTheMessageExpires_WithoutAnEnd(string expires, int hour)
    {
        var alert = Read(Feature(("ends", "null"), ("expires", Quoted(expires)))).Single();
        Assert.Equal((Eleven, Instant.FromUtc(2026, 4, 12, hour, 0)), (alert.StartsAt, alert.EndsAt));
    }

    [Theory]
    [InlineData("status", "\"Test\"")]
    [InlineData("status", "\"Exercise\"")]
    [InlineData("status", "\"System\"")]
    [InlineData("status", "\"Draft\"")]
    [InlineData("messageType", "\"Cancel\"")]
    [InlineData("event", "\"Flood Watch\"")]
    public void Read_PassesOver_WhatIsNotInForceOrOfNoKind(string name, string json) =>
        Assert.Empty(Read(Feature((name, json), ("ends", "\"no time\""))));

    [Theory]
    [InlineData("status", null)]
    [InlineData("status", "7")]
    [InlineData("messageType", null)]
    [InlineData("messageType", "\"Update\"")]
    [InlineData("messageType", "{}")]
    public void Read_KeepsAnAlert_ThatDoesNotSayThatItIsNone(string name, string? json) =>
        Assert.Single(Read(Feature((name, json))));

    [Fact]
    public void Read_KeepsAnAlertOnce_ThatIsListedTwice() => Assert.Single(Read(
        Feature(), Feature(), Feature(("onset", "\"2026-04-12T11:00:00.000000001+00:00\""))));

    [Theory]
    [InlineData("onset", "\"date:today 16:00:-5 +24 hours\"")]
    [InlineData("onset", "\"2026-04-12T11:00:00\"")]
    [InlineData("onset", "\"0001-01-01T00:00:00+14:00\"")]
    [InlineData("onset", "1775991600")]
    [InlineData("onset", "\"\\ud800\"")]
    [InlineData("ends", "\"2026-04-31T11:00:00+00:00\"")]
    [InlineData("ends", "\"9999-12-31T23:59:59-12:00\"")]
    [InlineData("ends", "\"2026-04-12T10:59:59+00:00\"")]     // before the onset
    [InlineData("ends", "{}")]
    public void Read_Fails_WhenTheTimesOfAKnownKindCannotBeRead(string name, string json)
    {
        var fault = Assert.Throws<FeedFormatException>(() => Read(Feature(), Feature((name, json))));
        Assert.Contains($"features[1] Red Flag Warning.{name} '", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_Fails_WithoutAnyTime()
    {
        var fault = Assert.Throws<FeedFormatException>(() => Read(
            Feature(("onset", null), ("effective", null), ("ends", null), ("expires", null))));
        Assert.Contains("features[0] Red Flag Warning.effective 'absent'", fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, "absent")]
    [InlineData("null", "null")]
    [InlineData("[\"Red Flag Warning\"]", "[")]
    [InlineData("\"\\udead\"", "")]
    public void Read_Fails_WhenAnAlertDoesNotSayWhatItIs(string? json, string shown)
    {
        var fault = Assert.Throws<FeedFormatException>(() => Read(Feature(("event", json))));
        Assert.Contains($"features[0].properties.event '{shown}", fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("null")]
    [InlineData("{\"features\": {}}")]
    [InlineData("{\"features\": [")]
    [InlineData("{\"features\": [null]}")]
    [InlineData("{\"features\": [{\"properties\": []}]}")]
    [InlineData("{\"features\": [], \"pagination\": {\"next\": \"https://api.weather.gov/alerts?cursor=a\"}}")]
    [InlineData("{\"properties\": {\"event\": \"Red Flag Warning\"}}")]
    public void Read_RefusesWhatIsNoWholeCollection(string json) =>
        Assert.Throws<FeedFormatException>(() => ActiveAlerts.Read(Encoding.UTF8.GetBytes(json)));

    [Fact]
    public void Read_RefusesJsonThatIsNestedWithoutEnd() =>
        Assert.Throws<FeedFormatException>(() => ActiveAlerts.Read(
            Encoding.UTF8.GetBytes($"{{\"features\": {new string('[', 10_000)}")));

    [Fact]
    public void Read_RefusesBytesThatAreNotUtf8() =>
        Assert.Throws<FeedFormatException>(
            () => ActiveAlerts.Read(Encoding.Latin1.GetBytes("{\"features\": [\"\u00e9\"]}")));

    [Theory]
    // 20 h on the 12th to 2 h on the 13th EDT.
    [InlineData("2026-04-13T00:00:00Z", "2026-04-13T06:00:00Z", "America/Detroit", 12, 13)]
    [InlineData("2026-04-13T00:00:00Z", "2026-04-13T06:00:00Z", "Etc/UTC", 13, 13)]
    // It ends at midnight.
    [InlineData("2026-04-12T12:00:00Z", "2026-04-13T04:00:00Z", "America/Detroit", 12, 12)]
    [InlineData("2026-04-12T12:00:00Z", "2026-04-13T04:00:01Z", "America/Detroit", 12, 13)]
    // It is over as soon as it begins, at midnight.
    [InlineData("2026-04-13T04:00:00Z", "2026-04-13T04:00:00Z", "America/Detroit", 13, 13)]
    public void InZone_GivesTheDaysThatItTouches(string starts, string ends, string zone, int first, int last)
    {
        var alert = Read(Feature(("onset", Quoted(starts)), ("ends", Quoted(ends)))).Single();
        Assert.Equal(
            new WeatherAlert(AlertKind.RedFlag, "Red Flag Warning", new(2026, 4, first), new(2026, 4, last)),
            alert.InZone(DateTimeZoneProviders.Tzdb[zone]));
    }

    private static ImmutableArray<ActiveAlert> Read(params IEnumerable<string> features) =>
        ActiveAlerts.Read(Payload(features));
}
