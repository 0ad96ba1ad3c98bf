using System.Net;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Shouldly;
using WorkWindows.Engine.Safety;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Notices;
using WorkWindows.Service.Tests.Notices.FollowUps;
using WorkWindows.Service.Tests.Safety.Checklists;

namespace WorkWindows.Service.Tests.Safety;

/// <summary>The usual cautions stand on every page, mail and sheet that leads to cutting.</summary>
public sealed class CautionsTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    /// <summary>Pages that say what may be done, or that a crew begins from.</summary>
    private static readonly string[] LeadToCutting =
    [
        "morning", "tasks", "map", OwnersLand, "week", "tasks/{id:guid}", "tasks/{id:guid}/days/{date?}", "tasks/{id:guid}/checklist",
        "tasks/{id:guid}/briefing", "tasks/{id:guid}/watch", "tasks/{id:guid}/work", Stand, OneProperty, PropertySeason, "board",
        "board/season", "board/print", "plan", "questions",
        "review", "review/{id:guid}/{date}", "help/practices/{id}",
    ];

    private const string Stand = "parcels/{id:guid}/stand";
    private const string OneProperty = "properties/{id:guid}";
    private const string PropertySeason = "properties/{id:guid}/season";
    private const string OwnersLand = "people/{id:guid}/land";

    /// <summary>Pages that show the same as one of those, to a landowner.</summary>
    private static readonly string[] SameForOwners = ["land", "land/{organization:guid}"];

    /// <summary>Pages that say nothing of what may be done.</summary>
    private static readonly string[] DoNot =
    [
        "sign-in", "sign-out", "problem", "notices", "incidents", "tasks/{id:guid}/incidents",
        "alarms/{organization:guid}/{call:guid}", "messages", "parcels/{id:guid}/weather",
        "help", "help/rules/{id}", "help/measures/{id}", "help/docs/{**path}", "crews", "weights", "import", "parcels/{id:guid}/boundary", "properties/{id:guid}/parcels/new",
        "unsubscribe/{organization:guid}/{person:guid}/{kind}",
    ];

    [Fact]
    public async Task Pages_ThatLeadToCutting_HaveThem()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var (consultant, _) = await given.AddAsync(Role.Consultant);
        var property = (await given.Office.Consultant.ReadAsync("/api/properties"))[0].Id();
        var (_, owner) = await given.AddAsync(Role.Landowner);
        foreach (var route in LeadToCutting)
        {
            var id = route switch { Stand => given.Office.Parcel, OneProperty or PropertySeason => property, OwnersLand => owner, _ => given.Task };
            var address = route.Replace("{id:guid}", $"{id}").Replace("{date?}", GivenChecklist.Day)
                .Replace("{date}", GivenChecklist.Day).Replace("{id}", "hinge-cut");
            var html = WebUtility.HtmlDecode(await consultant.GetStringAsync($"/{address}"));
            foreach (var caution in Cautions.Usual)
                html.ShouldContain(caution, customMessage: address);
        }
    }

    [Fact]
    public void Pages_AreEitherOfTheOnesThatDo_OrOfTheOthers() =>
        service.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.Metadata.GetMetadata<PageActionDescriptor>() is not null)
            .Select(endpoint => endpoint.RoutePattern.RawText!.TrimStart('/')).Distinct().Order()
            .ShouldBe(LeadToCutting.Concat(SameForOwners).Concat(DoNot).Order());

    [Theory]
    [InlineData(NoticeKinds.GoodToCut, "ooocccccc")]
    [InlineData(NoticeKinds.Reminder, "cooccccc")]
    [InlineData(NoticeKinds.DoNotStart, "occccccc")]
    [InlineData(NoticeKinds.StopWork, "cccccccc")]
    [InlineData(NoticeKinds.OpeningSoon, "uuuuuuuu")]
    [InlineData(NoticeKinds.ClosingEarly, "cccccccc")]
    [InlineData(NoticeKinds.FollowUp, "")]
    public void Mails_HaveThem_InBothForms(string kind, string days)
    {
        var notice = NightPlan.Of(NightOf(kind, days)).Messages.First(message => message.Kind == kind).Notice;

        foreach (var caution in Cautions.Usual)
        {
            NoticeText.Of(notice).ReplaceLineEndings(" ").ShouldContain(caution);
            WebUtility.HtmlDecode(NoticeHtml.Of(notice)).ShouldContain(caution);
        }
    }

    /// <summary>A night that has the mail to send.</summary>
    private static Night NightOf(string kind, string days)
    {
        var tomorrow = GivenNight.Today.PlusDays(1);
        return kind switch
        {
            NoticeKinds.DoNotStart =>
                GivenNight.Of(GivenNight.Work(days, task => task with { ScheduledOn = tomorrow })),
            NoticeKinds.StopWork =>
                GivenNight.Of(GivenNight.Work(days)) with { Announced = [GivenNight.Told(1, 2)] },
            // Hinge cutting opens on 25 January and ends before leaf-out, on 27 April.
            NoticeKinds.OpeningSoon => GivenNight.Of(GivenNight.Work(days, today: new(2026, 1, 15))),
            NoticeKinds.ClosingEarly => GivenNight.Of(GivenNight.Work(days)) with
            {
                SeasonEnds =
                [
                    new()
                    {
                        TaskId = GivenNight.TaskId,
                        PersonId = GivenNight.Owner.Id,
                        LastDay = new(2026, 5, 6),
                        ToldAt = GivenNight.Now,
                    },
                ],
            },
            NoticeKinds.FollowUp => FollowUpsDueTests.Given(FollowUpsDueTests.Due("re-cut", "2021-02-14")),
            _ => GivenNight.Of(GivenNight.Work(days)),
        };
    }
}
