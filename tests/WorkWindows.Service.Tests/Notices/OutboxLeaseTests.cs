using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using MimeKit;
using NodaTime;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Tests.Storage;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices;

/// <summary>A worker that is slow, or whose database goes away, while it holds a message.</summary>
public sealed class OutboxLeaseTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private readonly FakeClock _clock = new(Now);

    [Fact]
    public async Task Mark_IsWrittenOnAFreshConnection_WhenTheDatabaseGoesAwayAfterTheMailWasTaken()
    {
        var land = await MessageAsync();
        await using var server = new MailServer(MailServer.FreePort());
        using var host = new NoticeHost(
            database, _clock, new SmtpTransport(OutboxTests.Smtp(server.Port)),
            new KillBeforeCommand(database.Address.Owner, "SET sent_at", times: 3));

        await host.SendAsync(land.Organization);
        await host.SendAsync(land.Organization);

        server.Received.ShouldHaveSingleItem();
        (await RowAsync(land)).SentAt.ShouldBe(Now);
    }

    [Fact]
    public async Task Message_IsLeftAlone_ByAWorkerThatCouldNotFinishWithinItsLease()
    {
        var land = await MessageAsync();
        await using var server = new MailServer(MailServer.FreePort());
        using var sleepy = new NoticeHost(
            database, _clock, new SmtpTransport(OutboxTests.Smtp(server.Port)),
            new SleepAfterLease(_clock, Outbox.Lease - Duration.FromSeconds(60)));
        using var next = new NoticeHost(database, _clock, new SmtpTransport(OutboxTests.Smtp(server.Port)));

        await sleepy.SendAsync(land.Organization);
        server.Received.ShouldBeEmpty("sending may take the 60 seconds that are left");
        _clock.Advance(Duration.FromSeconds(60));
        await next.SendAsync(land.Organization);

        server.Received.ShouldHaveSingleItem();
    }

    [Fact]
    public async Task Message_StaysSent_WhenItsFirstWorkerComesBackWithARefusal()
    {
        var land = await MessageAsync();
        await using var server = new MailServer(MailServer.FreePort());
        using var next = new NoticeHost(database, _clock, new SmtpTransport(OutboxTests.Smtp(server.Port)));
        using var slow = new NoticeHost(database, _clock, new Slow(async () =>
        {
            _clock.Advance(Outbox.Lease);
            await next.SendAsync(land.Organization);
            throw new MailNotSentException("refused", isServerFault: false);
        }));

        await slow.SendAsync(land.Organization);

        var row = await RowAsync(land);
        (row.SentAt, row.LastError, row.Attempts).ShouldBe((Now + Outbox.Lease, null, 2));
    }

    [Fact]
    public async Task Message_IsMarkedAllTheSame_WhenItsWorkerComesBackAfterItsLease()
    {
        var land = await MessageAsync();
        using var dying = new NoticeHost(
            database, _clock, new Slow(() => throw new InvalidOperationException("Killed.")));
        using var slow = new NoticeHost(database, _clock, new Slow(async () =>
        {
            _clock.Advance(Outbox.Lease);
            await Should.ThrowAsync<InvalidOperationException>(() => dying.SendAsync(land.Organization));
        }));

        await slow.SendAsync(land.Organization);

        (await RowAsync(land)).SentAt.ShouldBe(Now + Outbox.Lease);
        slow.Logs.Lines.ShouldContain(line => line.Contains("sent after its lease"));
    }

    private async Task<GivenLand> MessageAsync()
    {
        var land = await GivenLand.StoreAsync(database);
        await using var db = land.Open();
        db.Messages.Add(OutboxTests.NewMessage(NoticeKinds.StopWork, 0, "Stop"));
        await db.SaveChangesAsync();
        return land;
    }

    private static async Task<Message> RowAsync(GivenLand land)
    {
        await using var db = land.Open();
        return await db.Messages.SingleAsync();
    }

    /// <summary>Stands still once it has taken a message.</summary>
    private sealed class SleepAfterLease(FakeClock clock, Duration time) : DbCommandInterceptor
    {
        private bool _hasSlept;

        public override ValueTask<DbDataReader> ReaderExecutedAsync(
            DbCommand command, CommandExecutedEventData eventData, DbDataReader result,
            CancellationToken cancellationToken = default)
        {
            if (!_hasSlept && command.CommandText.Contains("leased_until =", StringComparison.Ordinal))
            {
                _hasSlept = true;
                clock.Advance(time);
            }
            return ValueTask.FromResult(result);
        }
    }

    private sealed class Slow(Func<Task> meanwhile) : IMailTransport, IMailSession
    {
        public IMailSession Open() => this;

        public Task SendAsync(MimeMessage mail) => meanwhile();

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}
