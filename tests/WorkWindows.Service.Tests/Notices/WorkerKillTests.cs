using System.Diagnostics;
using Hangfire;
using NodaTime;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tests.Storage;

namespace WorkWindows.Service.Tests.Notices;

public sealed class WorkerKillTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    /// <remarks>
    /// Tie-down is bound to no season and the forecast is mild, so that the real date does not matter.
    /// </remarks>
    [Fact]
    public async Task AMessage_IsSentOnce_WhenItsWorkerIsKilledBetweenStoringAndSending()
    {
        var land = await GivenLand.StoreAsync(database, practice: "tie-down");
        var now = Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow());
        var today = now.InZone(DateTimeZoneProviders.Tzdb["America/Detroit"]).Date;
        await land.ForecastAsync("oooooooooo", today, now);
        await land.NoAlertsAsync(now);
        using var next = new NoticeHost(database, new FakeClock(now + Outbox.Lease + Duration.FromHours(1)));
        new BackgroundJobClient(next.Get<JobStorage>())
            .Enqueue<NightlyJob>(job => job.RunAsync(land.Organization, CancellationToken.None));
        var port = MailServer.FreePort();

        await using (var holding = new MailServer(port, holds: true))
        {
            using var worker = StartWorker(port, next.Folder);
            await holding.Greeted.WaitAsync(Patience);
            worker.Kill();
            await worker.WaitForExitAsync();
            holding.Received.ShouldBeEmpty();
        }
        await using var server = new MailServer(port);
        using var another = new NoticeHost(
            database, next.Get<IClock>(), new SmtpTransport(OutboxTests.Smtp(port)));
        await another.RunNightAsync(land.Organization);
        await another.SendAllAsync();
        await another.SendAllAsync();

        server.Received.ShouldHaveSingleItem().Subject.ShouldStartWith("Good to work this week: Cedar Hollow");
    }

    private Process StartWorker(int port, string folder)
    {
        var start = new ProcessStartInfo("dotnet", [typeof(NightlyRun).Assembly.Location, "serve"]);
        foreach (var (name, value) in new[]
        {
            (DatabaseServer.Variable, database.Address.Owner),
            (DataFolder.Variable, folder),
            (ServiceRoles.Variable, "worker"),
            ("WORKWINDOWS_DEMO", "off"),
            ("ASPNETCORE_URLS", "http://127.0.0.1:0"),
            ("Mail__Host", "127.0.0.1"),
            ("Mail__Port", $"{port}"),
            ("Mail__UseTls", "false"),
            ("Mail__From", "notices@example.org"),
        })
        {
            start.Environment[name] = value;
        }
        return Process.Start(start)!;
    }
}
