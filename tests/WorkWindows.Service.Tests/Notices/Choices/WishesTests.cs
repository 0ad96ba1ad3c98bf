using System.Collections.Immutable;
using NodaTime;
using Shouldly;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Notices.Choices;
using static WorkWindows.Service.Notices.Choices.NoticeChannels;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices.Choices;

public sealed class WishesTests
{
    [Theory]
    [InlineData(NoticeKinds.GoodToCut, Mail, true, "good-to-cut")]
    [InlineData(NoticeKinds.GoodToCut, Mail | Webhook, true, "good-to-cut good-to-cut:Webhook")]
    [InlineData(NoticeKinds.GoodToCut, Webhook, true, "good-to-cut:Webhook")]
    [InlineData(NoticeKinds.GoodToCut, Webhook, false, "")]
    [InlineData(NoticeKinds.GoodToCut, None, true, "")]
    public void Plan_TellsInTheWaysThatWereChosen(string kind, NoticeChannels chosen, bool hasWebhook, string messages)
    {
        var plan = NightPlan.Of(Given("cooccccc", Choosing(kind, chosen, hasWebhook)));

        Sent(plan).ShouldBe(messages);
        Runs(plan.Announced.Where(window => window.PersonId == Owner.Id)).ShouldBe(messages == "" ? "" : "1-2");
    }

    [Fact]
    public void Plan_RemembersTheWindow_WhenOnlyTheCalendarTellsIt()
    {
        var plan = NightPlan.Of(Given("cooccccc", Choosing(NoticeKinds.GoodToCut, Calendar, false)));

        Sent(plan).ShouldBe("");
        var window = plan.Announced.Where(window => window.PersonId == Owner.Id).ShouldHaveSingleItem();
        window.MessageKey.ShouldBeNull();
    }

    [Fact]
    public void Plan_TellsToStop_WhateverWasChosen()
    {
        var night = Given("cccccccc", Choosing(NoticeKinds.StopWork, None, true)) with { Announced = [Told(1, 2)] };

        Sent(NightPlan.Of(night)).ShouldBe("stop-work stop-work:Webhook");
    }

    [Theory]
    [InlineData(NoticeKinds.GoodToCut, true)]
    [InlineData(NoticeKinds.Reminder, true)]
    [InlineData(NoticeKinds.Outage, true)]
    [InlineData(NoticeKinds.StopWork, false)]
    [InlineData(NoticeKinds.DoNotStart, false)]
    [InlineData(NoticeKinds.MissedCheckIn, false)]
    [InlineData(NoticeKinds.CrewFine, false)]
    public void Earliest_IsAfterTheQuietHours_SaveForWhatCannotWait(string kind, bool waits)
    {
        var wishes = Wishes.Usual with { Quiet = new(new(8, 0), new(10, 0)) };
        var now = Instant.FromUtc(2026, 2, 2, 9, 0);

        wishes.Earliest(NoticeKinds.Find(kind)!, now).ShouldBe(waits ? Instant.FromUtc(2026, 2, 2, 10, 0) : now);
    }

    [Fact]
    public void Plan_TellsTemperaturesInTheScaleOfTheReader()
    {
        var celsius = Lead with { Wishes = Wishes.Usual with { Scale = TemperatureScale.Celsius } };
        var text = NoticeText.Of(NightPlan.Of(Given("cooccccc", Owner, celsius)).Messages
            .Single(message => message.Kind == NoticeKinds.Reminder).Notice);

        text.ShouldContain("minimum temperature: -3 °C (forecast)");
        text.ShouldContain("minimum temperature below -6.7 °C for 3 days in a row");
        text.ShouldContain("Wind chill of -27.8 °C or less: bare skin freezes in 30 min.");
        text.Split('\n').Where(line => !line.StartsWith("  [", StringComparison.Ordinal))
            .ShouldAllBe(line => !line.Contains("°F"), "only sources stay as their documents have them");
    }

    private static Recipient Choosing(string kind, NoticeChannels ways, bool hasWebhook) => Owner with
    {
        Wishes = Wishes.Usual with
        {
            Webhook = hasWebhook ? "https://hooks.example.org/nell" : null,
            Chosen = ImmutableDictionary<string, NoticeChannels>.Empty.Add(kind, ways),
        },
    };

    private static Night Given(string days, params Recipient[] people) => Of(Work(days)) with
    {
        People = people.Append(Lead).DistinctBy(person => person.Id).ToDictionary(person => person.Id),
    };

    private static string Sent(NightPlan plan) => string.Join(' ', plan.Messages.Where(message => message.To.Id == Owner.Id)
        .Select(message => message.Channel == Mail ? message.Kind : $"{message.Kind}:{message.Channel}"));
}
