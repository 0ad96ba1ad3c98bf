using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Tests.Storage;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices.Webhooks;

/// <summary>Nights of people who are told by webhook, alone or beside mail.</summary>
public sealed class WebhookNightTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private const string Secret = "whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw";

    private readonly FakeClock _clock = new(Now);

    [Fact]
    public async Task RunAsync_AddsNothing_WhenItRunsAgainForSomebodyWithoutMail()
    {
        var land = await LandAsync("cooooooo");
        await ChooseAsync(land, land.Lead, "https://hook.example.org", NoticeKinds.Reminder, NoticeChannels.Webhook);
        using var host = new NoticeHost(database, _clock);
        await host.RunNightAsync(land.Organization);

        _clock.AdvanceMinutes(1);
        await host.RunNightAsync(land.Organization);

        await using var db = land.Open();
        (await db.Messages.Where(message => message.RecipientId == land.Lead).Select(message => message.Channel)
            .ToListAsync()).ShouldBe([NoticeChannels.Webhook]);
    }

    [Fact]
    public async Task RunAsync_TakesBackAndOffersAnew_WhenTheWebhookHasLeftAndTheMailWaits()
    {
        await using var receiver = await WebhookServer.StartAsync();
        var land = await LandAsync("cooccccc");
        await ChooseAsync(
            land, land.Owner, receiver.Address, NoticeKinds.GoodToCut, NoticeChannels.Webhook | NoticeChannels.Mail);
        await QuietAsync(land, new(0, 0), new(8, 0));
        using var host = new NoticeHost(database, _clock, settings: ("Webhooks:AllowPrivateAddresses", "true"));
        await host.RunNightAsync(land.Organization);
        await host.SendAsync(land.Organization);
        _clock.AdvanceMinutes(30);
        await land.ForecastAsync("cccccooo", Today, _clock.GetCurrentInstant());

        await host.RunNightAsync(land.Organization);
        await host.SendAsync(land.Organization);

        receiver.Received.Select(hook => KindOf(hook.Body)).ShouldBe(
            [NoticeKinds.GoodToCut, NoticeKinds.StopWork, NoticeKinds.GoodToCut], ignoreOrder: true);
        await using var db = land.Open();
        var mails = await db.Messages
            .Where(message => message.RecipientId == land.Owner && message.Channel == NoticeChannels.Mail)
            .Where(message => message.Kind == NoticeKinds.GoodToCut).ToListAsync();
        mails.Count(mail => mail.GivenUp == GivenUp.Superseded).ShouldBe(1);
        mails.Single(mail => mail.GivenUp is null).TextBody.ShouldContain("Sat 7");
    }

    private static string KindOf(string body) =>
        System.Text.Json.JsonDocument.Parse(body).RootElement.GetProperty("kind").GetString()!;

    private async Task<GivenLand> LandAsync(string days)
    {
        var land = await GivenLand.StoreAsync(database);
        await land.ForecastAsync(days, Today, Now - Duration.FromHours(5));
        await land.NoAlertsAsync(Now - Duration.FromMinutes(10));
        return land;
    }

    private static async Task ChooseAsync(
        GivenLand land, Guid person, string address, string kind, NoticeChannels ways)
    {
        await using var db = land.Open();
        db.Add(new NoticeSettings { PersonId = person, WebhookAddress = address, WebhookSecret = Secret });
        db.Add(new NoticeChoice { PersonId = person, Kind = kind, Channels = ways, ChosenAt = Now });
        await db.SaveChangesAsync();
    }

    private static async Task QuietAsync(GivenLand land, LocalTime from, LocalTime until)
    {
        await using var db = land.Open();
        await db.NoticeSettings.ExecuteUpdateAsync(rows => rows
            .SetProperty(row => row.QuietFrom, from).SetProperty(row => row.QuietUntil, until));
    }
}
