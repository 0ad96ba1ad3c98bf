using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Notices.Webhooks;
using WorkWindows.Service.Tests.Storage;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices.Webhooks;

public sealed class WebhookTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private const string Secret = "whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw";

    private readonly FakeClock _clock = new(Now);

    [Fact]
    public async Task Message_IsPostedWithASignature_AndMarked()
    {
        await using var receiver = await WebhookServer.StartAsync();
        var land = await GivenAsync(receiver.Address);
        using var worker = Worker();

        await worker.SendAsync(land.Organization);

        var row = await RowAsync(land);
        row.SentAt.ShouldBe(Now);
        var hook = receiver.Received.ShouldHaveSingleItem();
        hook.Id.ShouldBe($"{row.Id:N}");
        hook.Timestamp.ShouldBe($"{Now.ToUnixTimeSeconds()}");
        hook.Signature.ShouldBe(
            new WebhookTarget(receiver.Address, Secret).Sign(hook.Id, Now.ToUnixTimeSeconds(), hook.Body));
        var body = JsonSerializer.Deserialize<JsonElement>(hook.Body);
        (body.GetProperty("kind").GetString(), body.GetProperty("subject").GetString(), body.GetProperty("text").GetString())
            .ShouldBe(("stop-work", "Stop", "Below 20 °F.\n"));
        body.GetProperty("createdAt").GetString().ShouldBe("2026-02-02T09:00:00Z");
    }

    [Theory]
    [InlineData(500)]
    [InlineData(404)]
    [InlineData(307)]
    public async Task Message_IsTriedAgainUnderTheSameId_WhenItIsNotTaken(int status)
    {
        await using var receiver = await WebhookServer.StartAsync();
        receiver.Status = status;
        var land = await GivenAsync(receiver.Address);
        using var worker = Worker();

        await worker.SendAsync(land.Organization);
        var waiting = await RowAsync(land);
        receiver.Status = 200;
        _clock.AdvanceMinutes(1);
        await worker.SendAsync(land.Organization);

        (waiting.LastError, waiting.SentAt, waiting.NextAttemptAt)
            .ShouldBe(($"HTTP status {status}", null, Now + Duration.FromMinutes(1)));
        (await RowAsync(land)).SentAt.ShouldNotBeNull();
        receiver.Received.Count.ShouldBe(2, "a redirect is not followed");
        receiver.Received.Select(hook => hook.Id).Distinct().Count().ShouldBe(1);
    }

    [Fact]
    public async Task Webhook_IsSwitchedOff_WhenItSaysThatItIsGone()
    {
        await using var receiver = await WebhookServer.StartAsync();
        receiver.Status = 410;
        var land = await GivenAsync(receiver.Address);
        using var worker = Worker();

        await worker.SendAsync(land.Organization);

        (await RowAsync(land)).GivenUp.ShouldBe(GivenUp.TurnedOff);
        await using var db = land.Open();
        var settings = await db.NoticeSettings.SingleAsync();
        (settings.WebhookAddress, settings.WebhookSecret).ShouldBe((null, null));
        (await db.Messages.CountAsync()).ShouldBe(1, "the stop goes by mail too, so nobody is unreachable");
    }

    [Fact]
    public async Task PrivateNetwork_IsNotReached_UnlessItIsAllowed()
    {
        await using var receiver = await WebhookServer.StartAsync();
        var land = await GivenAsync(receiver.Address.Replace("http:", "https:").Replace("127.0.0.1", "localhost"));
        using var worker = new NoticeHost(database, _clock);

        await worker.SendAsync(land.Organization);

        (await RowAsync(land)).LastError.ShouldBe("the webhook's host is on a private network");
        receiver.Received.ShouldBeEmpty();
    }

    [Fact]
    public async Task Message_GoesToTheNewAddress_WhenTheWebhookWasMoved()
    {
        await using var receiver = await WebhookServer.StartAsync();
        var land = await GivenAsync(receiver.Address, written: "https://old.example.org/in");
        using var worker = Worker();

        await worker.SendAsync(land.Organization);

        receiver.Received.Count.ShouldBe(1);
        (await RowAsync(land)).ToAddress.ShouldBe(receiver.Address);
    }

    private NoticeHost Worker() => new(
        database, _clock, settings: ("Webhooks:AllowPrivateAddresses", "true"));

    private async Task<GivenLand> GivenAsync(string address, string? written = null)
    {
        var land = await GivenLand.StoreAsync(database);
        await land.AddConsultantAsync();
        await using var db = land.Open();
        db.Add(new NoticeSettings { PersonId = land.Lead, WebhookAddress = address, WebhookSecret = Secret });
        db.Add(new Message
        {
            DedupeKey = "one",
            Kind = NoticeKinds.StopWork,
            Channel = NoticeChannels.Webhook,
            RecipientId = land.Lead,
            ToAddress = written ?? address,
            Subject = "Stop",
            TextBody = "Below 20 °F.\n",
            HtmlBody = "<p>Below 20 °F.</p>",
            MessageId = "one@example.org",
            CreatedAt = Now,
            NextAttemptAt = Now,
        });
        await db.SaveChangesAsync();
        return land;
    }

    private static async Task<Message> RowAsync(GivenLand land)
    {
        await using var db = land.Open();
        return await db.Messages.SingleAsync();
    }
}
