using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Engine.Decisions;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Tests.Notices;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Weather;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Windows;

/// <summary>The alerts that an evaluation saw, as its snapshot keeps them.</summary>
public sealed class EvaluatedAlertsTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    [Theory]
    [InlineData(1, "0 1 0 0 0 0 0 0")]
    [InlineData(4, "- 1 - - - - - 0")]       // nobody has asked for four hours: what was in force stays so
    [InlineData(null, "- - - - - - - 0")]
    public async Task Evaluate_SeesTheAlertsOfItsStation(int? hoursAgo, string windAlerts)
    {
        var land = await GivenLand.StoreAsync(database);
        await land.ForecastAsync("oooooooo", Today, Now - Duration.FromHours(5));
        if (hoursAgo is { } hours)
            await StoreAsync(land, Now - Duration.FromHours(hours));
        using var host = new NoticeHost(database, new FakeClock(Now));

        await host.RunNightAsync(land.Organization);

        await using var db = land.Open();
        var snapshot = await db.WeatherSnapshots.SingleAsync(TestContext.Current.CancellationToken);
        var alert = Snapshot.Read(snapshot.Content)[SignalKind.WindAlert]!;
        var from = alert.Span.IndexOf(Today);
        string.Join(' ', alert.Values.Skip(from).Take(8).Select(value => double.IsNaN(value) ? "-" : $"{value}"))
            .ShouldBe(windAlerts);
        alert.Bases[from + 1].ShouldBe(hoursAgo is null ? Basis.Missing : Basis.Alert);
    }

    /// <summary>A wind advisory for tomorrow.</summary>
    private static async Task StoreAsync(GivenLand land, Instant fetchedAt)
    {
        await using var db = land.Open();
        var report = new WeatherAlertReport { StationId = land.Station, FetchedAt = fetchedAt };
        report.Alerts.Add(new()
        {
            Kind = AlertKind.Wind,
            Event = "Wind Advisory",
            StartsAt = Now + Duration.FromHours(28),
            EndsAt = Now + Duration.FromHours(36),
        });
        db.Add(report);
        await db.SaveChangesAsync();
    }
}
