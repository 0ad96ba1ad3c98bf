using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Testing;
using NodaTime.Text;
using Shouldly;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Feeds.Tests.Alerts;
using WorkWindows.Feeds.Tests.Forecasts;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Weather;
using WorkWindows.Service.Windows;
using WorkWindows.Tests;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices;

/// <summary>The weather service stops and comes back: what the days are, and what the consultant is told.</summary>
public sealed class OutageTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private static readonly (string, string) Agent = ("Feeds:UserAgent", "(woods.example.org, office@example.org)");

    private readonly FakeClock _clock = new(Now);
    private bool _answers = true;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Outage_LeavesDaysUnknownAfterItsAge_IsToldOnce_AndHealsByItself()
    {
        var land = await GivenLand.StoreAsync(database);
        await land.AddConsultantAsync();
        await using var service = await ReplayServer.StartAsync(AnswerAsync);
        await using var mail = new MailServer(MailServer.FreePort());
        using var host = new NoticeHost(
            database, _clock, new SmtpTransport(OutboxTests.Smtp(mail.Port)),
            settings: [Agent, ("Feeds:NationalWeatherService", $"{service.Address}")]);

        (await RoundAsync(minutes: 0)).ShouldBe((DayState.Open, 0, true));
        _answers = false;
        (await RoundAsync(minutes: 180)).ShouldBe((DayState.Open, 0, false), "alerts of three hours ago still count");
        (await RoundAsync(minutes: 1)).ShouldBe((DayState.Unknown, 1, true), "alerts are not known");
        (await RoundAsync(minutes: 60)).ShouldBe((DayState.Unknown, 1, false), "told once");
        (await RoundAsync(minutes: 44 * 60)).ShouldBe(
            (DayState.Unknown, 2, true), "now the forecast is too old as well");
        (await RoundAsync(minutes: 24 * 60)).ShouldBe((DayState.Unknown, 2, false));
        _answers = true;
        (await RoundAsync(minutes: 60)).ShouldBe((DayState.Open, 2, true), "healed without a hand or a mail");
        _answers = false;
        (await RoundAsync(minutes: 181)).ShouldBe((DayState.Unknown, 3, true), "the next outage is told anew");

        mail.Received.Select(one => one.Subject).ShouldBe([
            "No new weather alerts for Larkspur (USC00200001)",
            "No new forecasts for Larkspur (USC00200001)",
            "No new weather alerts for Larkspur (USC00200001)",
        ]);
        mail.Received.First().TextBody!.ShouldContain("failed: The feed answered 404");

        // What tomorrow is, how many mails the consultant has by now, and whether the tasks are to be looked at.
        async Task<(DayState, int, bool)> RoundAsync(int minutes)
        {
            _clock.AdvanceMinutes(minutes);
            host.Queued.Clear();
            await host.InScopeAsync<ForecastRound>(round => round.RunAsync(land.Organization, Cancellation));
            await host.SendAsync(land.Organization);
            return (
                await StateOfTomorrowAsync(host, land), mail.Received.Count,
                host.Queued.Any(job => job.Type == typeof(LookJob)));
        }
    }

    [Fact]
    public async Task Outage_IsToldWhenSomeoneCanBeTold()
    {
        var land = await GivenLand.StoreAsync(database);
        await using var service = await ReplayServer.StartAsync(AnswerAsync);
        using var host = new NoticeHost(
            database, _clock, settings: [Agent, ("Feeds:NationalWeatherService", $"{service.Address}")]);
        _answers = false;
        await RoundAsync();
        _clock.AdvanceHours(4);

        await host.TakeDueAsync(land.Organization);
        await RoundAsync();
        host.Logs.Lines.ShouldContain("Warning: 1 feeds have stopped, and no consultant has a mail address to be told");
        (await LooksAtAsync()).ShouldBe([land.Station], "days have become unknown, whoever is told");
        await RoundAsync();
        (await LooksAtAsync()).ShouldBeEmpty("once");
        await land.AddConsultantAsync();
        await RoundAsync();
        await RoundAsync();
        (await LooksAtAsync()).ShouldBeEmpty("a mail makes no day unknown");

        async Task<IReadOnlyCollection<Guid>> LooksAtAsync() => (await host.TakeDueAsync(land.Organization)).Outlooks;

        await using var db = land.Open();
        var told = await db.Messages.SingleAsync(message => message.Kind == NoticeKinds.Outage, Cancellation);
        told.TextBody.ShouldContain(
            "none has come since it was first asked for, Mon 2 Feb 2026, 04:00 (America/Detroit)");

        Task RoundAsync() =>
            host.InScopeAsync<ForecastRound>(round => round.RunAsync(land.Organization, Cancellation));
    }

    [Fact]
    public async Task Outage_IsToldInTheWayThatTheConsultantChose()
    {
        var land = await GivenLand.StoreAsync(database);
        await land.AddConsultantAsync();
        await using (var db = land.Open())
        {
            var ada = await db.People.Where(person => person.DisplayName == "ada").Select(person => person.Id)
                .SingleAsync(Cancellation);
            db.Add(new NoticeSettings
            {
                PersonId = ada,
                WebhookAddress = "https://hook.example.org/in",
                WebhookSecret = "whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw",
            });
            db.Add(new NoticeChoice
            {
                PersonId = ada,
                Kind = NoticeKinds.Outage,
                Channels = NoticeChannels.Webhook,
                ChosenAt = Now,
            });
            await db.SaveChangesAsync(Cancellation);
        }
        await using var service = await ReplayServer.StartAsync(AnswerAsync);
        using var host = new NoticeHost(
            database, _clock, settings: [Agent, ("Feeds:NationalWeatherService", $"{service.Address}")]);
        _answers = false;
        foreach (var hours in new[] { 4, 0 })
        {
            await host.InScopeAsync<ForecastRound>(round => round.RunAsync(land.Organization, Cancellation));
            _clock.AdvanceHours(hours);
        }

        await using var stored = land.Open();
        (await stored.Messages.Select(message => message.Channel).ToListAsync(Cancellation))
            .ShouldBe([NoticeChannels.Webhook]);
    }

    [Fact]
    public async Task Outage_StopsTheWork_WhenNoConsultantCanBeTold()
    {
        var land = await GivenLand.StoreAsync(database);
        await using var service = await ReplayServer.StartAsync(AnswerAsync);
        using var host = new NoticeHost(
            database, _clock, settings: [Agent, ("Feeds:NationalWeatherService", $"{service.Address}")]);
        await RoundAsync();
        await using (var db = land.Open())
        {
            db.Add(new Announcement
            {
                TaskId = await db.PlannedTasks.Select(task => task.Id).SingleAsync(Cancellation),
                PersonId = land.Lead,
                FirstDay = Today,
                LastDay = Today.PlusDays(3),
                AnnouncedAt = Now,
            });
            await db.SaveChangesAsync(Cancellation);
        }
        _answers = false;
        _clock.AdvanceHours(4);

        await RoundAsync();

        await using var stored = land.Open();
        (await stored.Messages.Where(message => message.Kind == NoticeKinds.StopWork)
            .Select(message => message.RecipientId).ToListAsync(Cancellation)).ShouldContain(land.Lead);

        async Task RoundAsync()
        {
            await host.InScopeAsync<ForecastRound>(round => round.RunAsync(land.Organization, Cancellation));
            await host.LookAsync(land.Organization);
        }
    }

    private async Task<DayState> StateOfTomorrowAsync(NoticeHost host, GivenLand land)
    {
        var today = _clock.GetCurrentInstant().InZone(DateTimeZoneProviders.Tzdb["America/Detroit"]).Date;
        IReadOnlyList<EvaluatedTask> evaluated = [];
        await host.InOrganizationAsync<IServiceProvider>(land.Organization, async scope =>
            evaluated = await scope.GetRequiredService<TaskEvaluator>().EvaluateAsync(
                scope.GetRequiredService<WorkWindowsDb>().PlannedTasks, new DaySpan(today, 3), Cancellation));
        return evaluated.Single().Evaluation[today.PlusDays(1)];
    }

    /// <summary>Mild and calm days from today on, issued now, and no alerts; or that there is no such page.</summary>
    private Task AnswerAsync(HttpContext context)
    {
        if (!_answers)
            return ReplayServer.SendAsync(
                context, 404, "application/problem+json", "{\"title\": \"Not Found\"}"u8.ToArray());
        var now = _clock.GetCurrentInstant();
        var body = context.Request.Path switch
        {
            var path when path.StartsWithSegments("/points") =>
                File.ReadAllBytes(ProjectFiles.Reference("feeds/forecast/points/42.745,-73.752.json")),
            var path when path.StartsWithSegments("/alerts") => AlertJson.Payload(),
            _ => Gridpoint(now),
        };
        return ReplayServer.SendAsync(context, 200, "application/geo+json", body);
    }

    /// <summary>Eight days of 30 °F, little wind and no rain, from midnight in Detroit on.</summary>
    private static byte[] Gridpoint(Instant now)
    {
        var layers = new (string Name, string Unit, int Value)[]
        {
            ("temperature", "degC", -1), ("windSpeed", "km_h-1", 7), ("windGust", "km_h-1", 14),
            ("quantitativePrecipitation", "mm", 0),
        };
        var values = layers.Select(layer => $$"""
            "{{layer.Name}}": {"uom": "wmoUnit:{{layer.Unit}}", "values": [
              {"validTime": "{{now.InUtc().Date:R}}T05:00:00+00:00/P8D", "value": {{layer.Value}} }]}
            """);
        return Encoding.UTF8.GetBytes($$"""
            {"properties": {"updateTime": "{{InstantPattern.General.Format(now)}}", {{string.Join(", ", values)}} } }
            """);
    }
}
