using Microsoft.Extensions.Caching.Memory;
using NodaTime;
using Shouldly;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tests.Weather;

/// <summary>What is known of the alerts of a station on 12 April 2026, at noon in Detroit.</summary>
public sealed class WeatherAlertsTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private static readonly DateTimeZone Detroit = DateTimeZoneProviders.Tzdb["America/Detroit"];
    private static readonly LocalDate Today = new(2026, 4, 12);
    private static readonly Instant Noon = Instant.FromUtc(2026, 4, 12, 16, 0);
    private static readonly DaySpan Week = new(Today, 7);

    [Theory]
    [InlineData(0, true)]
    [InlineData(180, true)]
    [InlineData(181, false)]
    [InlineData(60 * 24 * 30, false)]
    [InlineData(-1, false)]          // it was fetched later than is asked about
    public async Task Alerts_AreKnown_WhenAReportIsAtMostThreeHoursOld(int minutesAgo, bool isKnown)
    {
        var (organization, station) = await StoreAsync();
        await ReportAsync(organization, station, Noon - Duration.FromMinutes(minutesAgo));

        var report = await AlertsAsync(organization, station);

        report.Alerts.ShouldBeEmpty();
        report.NotKnown.ShouldBe(isKnown ? null : Week);
    }

    [Fact]
    public async Task Alerts_AreNotKnown_WithoutAReportOrAStation()
    {
        var (organization, station) = await StoreAsync();

        (await AlertsAsync(organization, station)).NotKnown.ShouldBe(Week);
        (await AlertsAsync(organization, null)).NotKnown.ShouldBe(Week);
    }

    [Fact]
    public async Task Alerts_AreThoseOfTheNewestReport_FromTodayOn()
    {
        var (organization, station) = await StoreAsync();
        var other = await GivenStation.StoreAsync(database, organization, "USC00200002", 43, -85);
        await ReportAsync(organization, station, Noon - Duration.FromHours(2), (AlertKind.Thunderstorm, 12, 12));
        await ReportAsync(organization, other, Noon, (AlertKind.WinterStorm, 12, 12));
        await ReportAsync(
            organization, station, Noon - Duration.FromHours(1), (AlertKind.Wind, 11, 13), (AlertKind.RedFlag, 14, 14));

        var report = await AlertsAsync(organization, station);

        Shown(report).ShouldBe(["RedFlag 14-14", "Wind 12-13"]);
        report.NotKnown.ShouldBeNull();
    }

    [Fact]
    public async Task Alerts_OfAnOldReport_StayInForceOnDaysThatAreNotKnown()
    {
        var (organization, station) = await StoreAsync();
        await ReportAsync(organization, station, Noon - Duration.FromHours(40), (AlertKind.Wind, 12, 13));

        var report = await AlertsAsync(organization, station);

        Shown(report).ShouldBe(["Wind 12-13"]);
        report.NotKnown.ShouldBe(Week);
    }

    [Fact]
    public async Task Alerts_OfADayThatIsOver_AreThoseThatWereReportedOnIt()
    {
        var (organization, station) = await StoreAsync();
        // A watch for the 11th that was taken back, a wind advisory from the 9th on, seen twice on the 10th.
        await ReportAsync(
            organization, station, Instant.FromUtc(2026, 4, 9, 12, 0), (AlertKind.WinterStorm, 11, 11),
            (AlertKind.Wind, 9, 10));
        await ReportAsync(organization, station, Instant.FromUtc(2026, 4, 10, 12, 0), (AlertKind.Wind, 9, 10));
        await ReportAsync(organization, station, Instant.FromUtc(2026, 4, 10, 13, 0), (AlertKind.Wind, 9, 10));
        // Half past eleven at night on the 10th in Detroit.
        await ReportAsync(organization, station, Instant.FromUtc(2026, 4, 11, 3, 30), (AlertKind.RedFlag, 10, 11));
        await ReportAsync(organization, station, Noon);

        Shown(await AlertsAsync(organization, station)).ShouldBe(["RedFlag 10-10", "Wind 10-10", "Wind 9-9"]);
        Shown(await AlertsAsync(organization, station, Today.PlusDays(-2))).ShouldBe(["RedFlag 10-10", "Wind 10-10"]);
    }

    [Fact]
    public async Task Alert_IsOne_WhenReportsOfTwoHoursTellIt()
    {
        var (organization, station) = await StoreAsync();
        foreach (var hour in new[] { 12, 13 })
        {
            await ReportAsync(
                organization, station, Instant.FromUtc(2026, 4, 10, hour, 0), (AlertKind.Wind, 10, 10));
            await ReportAsync(
                organization, station, Instant.FromUtc(2026, 4, 12, hour, 0), (AlertKind.RedFlag, 12, 12));
        }

        Shown(await AlertsAsync(organization, station)).ShouldBe(["RedFlag 12-12", "Wind 10-10"]);
    }

    private static IEnumerable<string> Shown(AlertReport report) => report.Alerts
        .Select(alert => $"{alert.Kind} {alert.First.Day}-{alert.Last.Day}").Order(StringComparer.Ordinal);

    private async Task<(Guid Organization, Guid Station)> StoreAsync()
    {
        var organization = await database.AddOrganizationAsync("Org");
        return (organization, await GivenStation.StoreAsync(database, organization, "USC00200001", 42.7, -84.5));
    }

    /// <summary>Stores a report; alerts last from six in the morning of a day of April to six in the evening.</summary>
    private async Task ReportAsync(
        Guid organization, Guid station, Instant fetchedAt, params (AlertKind Kind, int First, int Last)[] alerts)
    {
        await using var db = database.Open(organization);
        var report = new WeatherAlertReport { StationId = station, FetchedAt = fetchedAt };
        foreach (var (kind, first, last) in alerts)
        {
            report.Alerts.Add(new()
            {
                Kind = kind,
                Event = $"{kind}",
                StartsAt = Instant.FromUtc(2026, 4, first, 10, 0),
                EndsAt = Instant.FromUtc(2026, 4, last, 22, 0),
            });
        }
        db.Add(report);
        await db.SaveChangesAsync();
    }

    private async Task<AlertReport> AlertsAsync(Guid organization, Guid? station, LocalDate? first = null)
    {
        using var cache = new MemoryCache(new MemoryCacheOptions());
        await using var db = database.Open(organization);
        return (await new WeatherRecords(db, cache).OutlooksAsync(
            [(station, Detroit)], Noon, first ?? Today.PlusDays(-30), TestContext.Current.CancellationToken))[(station, Detroit)].Alerts;
    }
}
