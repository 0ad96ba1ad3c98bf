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
        "week", "tasks/{id:guid}", "tasks/{id:guid}/days/{date?}", "tasks/{id:guid}/checklist",
        "tasks/{id:guid}/briefing", "tasks/{id:guid}/watch", "tasks/{id:guid}/work", Stand, OneProperty, "board",
        "board/season", "board/print", "plan", "questions",
    ];

    private const string Stand = "parcels/{id:guid}/stand";
    private const string OneProperty = "properties/{id:guid}";

    /// <summary>Pages that say nothing of what may be done.</summary>
    private static readonly string[] DoNot =
    [
        "sign-in", "sign-out", "problem", "notices", "incidents", "tasks/{id:guid}/incidents",
        "alarms/{organization:guid}/{call:guid}", "messages", "parcels/{id:guid}/weather",
        "crews", "weights",
        "unsubscribe/{organization:guid}/{person:guid}/{kind}",
    ];

    [Fact]
    public async Task Pages_ThatLeadToCutting_HaveThem()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var (consultant, _) = await given.AddAsync(Role.Consultant);
        var property = (await given.Office.Consultant.ReadAsync("/api/properties"))[0].Id();
        foreach (var route in LeadToCutting)
        {
            var id = route switch { Stand => given.Office.Parcel, OneProperty => property, _ => given.Task };
            var address = route.Replace("{id:guid}", $"{id}").Replace("{date?}", GivenChecklist.Day);
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
            .ShouldBe(LeadToCutting.Concat(DoNot).Order());

    [Theory]
    [InlineData(NoticeKinds.GoodToCut, "ooocccccc")]
    [InlineData(NoticeKinds.Reminder, "cooccccc")]
    [InlineData(NoticeKinds.DoNotStart, "occccccc")]
    [InlineData(NoticeKinds.StopWork, "cccccccc")]
    [InlineData(NoticeKinds.OpeningSoon, "uuuuuuuu")]
    [InlineData(NoticeKinds.ClosingEarly, "cccccccc")]
    [InlineData(NoticeKinds.FollowUp, "cccccccc")]
    public void Mails_HaveThem_InBothForms(string kind, string days)
    {
        var task = GivenNight.Work(days, task => kind == NoticeKinds.DoNotStart
            ? task with { ScheduledOn = GivenNight.Today.PlusDays(1) }
            : task, kind == NoticeKinds.OpeningSoon ? new(2026, 1, 15) : null);
        var night = kind == NoticeKinds.FollowUp
            ? FollowUpsDueTests.Given(FollowUpsDueTests.Due("tie-down", "2024-02-14", "T-9"))
            : GivenNight.Of(task);
        if (kind == NoticeKinds.StopWork)
            night = night with { Announced = [GivenNight.Told(1, 2)] };
        if (kind == NoticeKinds.ClosingEarly)
        {
            night = night with
            {
                SeasonEnds =
                [
                    new() { TaskId = GivenNight.TaskId, PersonId = GivenNight.Owner.Id, LastDay = new(2026, 5, 6), ToldAt = GivenNight.Now },
                ],
            };
        }

        var notice = NightPlan.Of(night).Messages.First(message => message.Kind == kind).Notice;

        foreach (var caution in Cautions.Usual)
        {
            NoticeText.Of(notice).ReplaceLineEndings(" ").ShouldContain(caution);
            WebUtility.HtmlDecode(NoticeHtml.Of(notice)).ShouldContain(caution);
        }
    }
}
