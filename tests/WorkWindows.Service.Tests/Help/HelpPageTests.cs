using System.Net;
using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Shouldly;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Safety;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Help;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;
using WorkWindows.Service.Tests.Rules;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Tests.Help;

public sealed partial class HelpPageTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Rules_EachHaveAPage_ThatNamesTheirSource()
    {
        var (_, consultant) = await GivenAsync();

        foreach (var rules in service.Services.GetRequiredService<RulePacks>().Packs.SelectMany(pack => pack.Rules).GroupBy(rule => rule.Id))
        {
            var page = WebUtility.HtmlDecode(await consultant.GetStringAsync($"/help/rules/{rules.Key}"));
            foreach (var rule in rules)
            {
                page.ShouldContain(rule.Because, customMessage: rule.Id);
                page.ShouldContain(Wording.Of(rule.Source), customMessage: rule.Id);
            }
        }
    }

    [Fact]
    public async Task Practices_EachHaveAPage_ThatSaysWhatTheyAre_AndWhichRulesSpeakOfThem()
    {
        var (_, consultant) = await GivenAsync();

        foreach (var practice in PracticeCatalogue.All)
        {
            var page = WebUtility.HtmlDecode(await consultant.GetStringAsync($"/help/practices/{practice.Id}"));
            page.ShouldContain(HelpWords.Of(practice));
            page.ShouldContain("/help/rules/");
            HelpWords.Of(practice).ShouldNotBe(practice.Name);
        }
    }

    [Fact]
    public async Task Measures_EachHaveAPage_ThatNamesTheirSource()
    {
        var (_, consultant) = await GivenAsync();

        foreach (var item in SafetyChecklist.AllItems)
        {
            var page = WebUtility.HtmlDecode(await consultant.GetStringAsync($"/help/measures/{item.Id}"));
            page.ShouldContain(item.Text);
            page.ShouldContain(item.Cited);
        }
    }

    [Fact]
    public async Task Guide_LeadsToNothingThatIsNotThere()
    {
        var (_, consultant) = await GivenAsync();
        var (open, seen) = (new Queue<Uri>([new("http://localhost/help/docs/guide.md")]), new HashSet<string>());

        while (open.TryDequeue(out var address))
        {
            if (!seen.Add(address.AbsolutePath))
                continue;
            using var answer = await consultant.GetAsync(address.AbsolutePath);
            answer.StatusCode.ShouldBe(HttpStatusCode.OK, address.AbsolutePath);
            if (answer.Content.Headers.ContentType?.MediaType != "text/html")
                continue;
            foreach (Match link in Links().Matches(WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync())))
            {
                var target = new Uri(address, link.Groups[1].Value);
                if (target.Host == address.Host && target.AbsolutePath.StartsWith("/help/docs/", StringComparison.Ordinal))
                    open.Enqueue(target);
            }
        }

        seen.Count.ShouldBeGreaterThan(30);
        seen.ShouldContain(path => path.EndsWith(".jpg", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("/help/docs/../Program.cs")]
    [InlineData("/help/docs/no-such.md")]
    [InlineData("/help/docs/")]
    [InlineData("/help/rules/no-such")]
    [InlineData("/help/practices/no-such")]
    [InlineData("/help/measures/no-such")]
    [InlineData("/help/tour/99")]
    public async Task Pages_OfNothing_AreNotThere(string address)
    {
        var (_, consultant) = await GivenAsync();

        (await consultant.GetAsync(address)).StatusCode.ShouldBe(HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task Tour_LeadsThroughEveryStop_AndEnds()
    {
        var (machine, consultant) = await GivenAsync();
        var (_, parcel) = await Land.CreateAsync(machine, -84.4, 42.6, "26065", "MI");
        await Land.TaskAsync(machine, parcel, "tie-down");

        for (var number = 1; number <= Tour.Steps.Count; number++)
        {
            using var led = await consultant.GetAsync($"/help/tour/{number}");
            led.StatusCode.ShouldBe(HttpStatusCode.Redirect);
            var page = WebUtility.HtmlDecode(await consultant.GetStringAsync(led.Headers.Location));
            page.ShouldContain(Tour.Steps[number - 1].Says);
            page.Contains($"/help/tour/{number + 1}", StringComparison.Ordinal).ShouldBe(number < Tour.Steps.Count);
        }
    }

    [Fact]
    public async Task Help_IsForLandownersToo_AndTheTourIsNot()
    {
        var (_, _) = await GivenAsync();
        var name = $"o.{Guid.NewGuid():N}@example.org";
        await service.AddPersonAsync(organization, name, Role.Landowner);
        var owner = (await service.SignInAsync(name)).Client;

        (await owner.GetStringAsync("/help")).ShouldNotContain("/help/tour/");
        (await owner.GetAsync("/help/tour/1")).StatusCode.ShouldBe(HttpStatusCode.Forbidden);
    }

    [Fact]
    public async Task Rule_OfAProperty_IsExplainedToWhoeverSeesTheProperty()
    {
        var office = await Consultancy.OpenAsync(service);
        await office.PutPackAsync(
            "pack: hollow\nversion: \"1\"\ntitle: Hollow\nlevel: property\nrules:\n"
            + HousePack.Rule("hollow.wet", "closes", "calendar: { from: 03-05, to: 03-10 }"), $"/api/rule-packs/hollow?property={office.Property}");
        var (owner, stranger) = (await OwnerAsync(), await OwnerAsync());
        await using (var db = service.Database.Open(office.Organization))
        {
            await db.Properties.Where(property => property.Id == office.Property)
                .ExecuteUpdateAsync(row => row.SetProperty(property => property.LandownerId, owner.Id), TestContext.Current.CancellationToken);
        }

        (await office.Consultant.GetAsync("/help/rules/hollow.wet")).StatusCode.ShouldBe(HttpStatusCode.OK);
        (await owner.Client.GetAsync("/help/rules/hollow.wet")).StatusCode.ShouldBe(HttpStatusCode.OK);
        (await stranger.Client.GetAsync("/help/rules/hollow.wet")).StatusCode.ShouldBe(HttpStatusCode.NotFound);

        async Task<(Guid Id, HttpClient Client)> OwnerAsync()
        {
            var name = $"o.{Guid.NewGuid():N}@example.org";
            var id = await service.AddPersonAsync(office.Organization, name, Role.Landowner);
            return (id, (await service.SignInAsync(name)).Client);
        }
    }

    [GeneratedRegex("(?:href|src)=\"([^\"#]+)")]
    private static partial Regex Links();

    private Guid organization;

    private async Task<(HttpClient Machine, HttpClient Consultant)> GivenAsync()
    {
        organization = await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}");
        var name = $"c.{Guid.NewGuid():N}@example.org";
        await service.AddPersonAsync(organization, name, Role.Consultant);
        return (await service.MachineAsync(organization), (await service.SignInAsync(name)).Client);
    }
}
