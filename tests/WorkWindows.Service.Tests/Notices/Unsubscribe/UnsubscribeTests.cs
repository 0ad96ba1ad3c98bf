using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using MimeKit;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Notices.Unsubscribe;
using WorkWindows.Service.Tests.Hosting;

namespace WorkWindows.Service.Tests.Notices.Unsubscribe;

public sealed class UnsubscribeTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Site = "https://woods.example.org/";

    [Fact]
    public async Task Post_TurnsMailsOfTheKindOff_AtOnceAndTwice_WithoutSigningIn()
    {
        var (path, organization, person) = await GivenAsync();
        using var client = service.Anonymous();

        using var first = await client.PostAsync(path, OneClick());
        using var second = await client.PostAsync(path, OneClick());

        (first.StatusCode, second.StatusCode).ShouldBe((HttpStatusCode.OK, HttpStatusCode.OK));
        first.Headers.Contains("Set-Cookie").ShouldBeFalse();
        await using var db = service.Database.Open(organization);
        var choice = await db.NoticeChoices.SingleAsync();
        (choice.PersonId, choice.Kind, choice.Channels)
            .ShouldBe((person, NoticeKinds.GoodToCut, NoticeChannels.Calendar));
        var entry = await db.AuditEntries.SingleAsync();
        (entry.RowId, entry.PersonId).ShouldBe((person, person));
        entry.By.ShouldEndWith("@example.org, by the link of a mail");
    }

    [Fact]
    public async Task Get_ChangesNothing_BecauseMailProgramsOpenLinks()
    {
        var (path, organization, _) = await GivenAsync();

        var page = await service.Anonymous().GetStringAsync(path);

        page.ShouldContain("Turn these mails off");
        await using var db = service.Database.Open(organization);
        (await db.NoticeChoices.CountAsync()).ShouldBe(0);
    }

    [Fact]
    public async Task OtherWays_StayAsTheyWereChosen()
    {
        var (path, organization, person) = await GivenAsync();
        await using (var before = service.Database.Open(organization))
        {
            before.Add(new NoticeChoice
            {
                PersonId = person,
                Kind = NoticeKinds.GoodToCut,
                Channels = NoticeChannels.Mail | NoticeChannels.Webhook,
                ChosenAt = service.Clock.GetCurrentInstant(),
            });
            await before.SaveChangesAsync();
        }

        await service.Anonymous().PostAsync(path, OneClick());

        await using var db = service.Database.Open(organization);
        (await db.NoticeChoices.SingleAsync()).Channels.ShouldBe(NoticeChannels.Webhook);
    }

    [Theory]
    [InlineData("good-to-cut", "reminder")]
    [InlineData("good-to-cut", "stop-work")]
    [InlineData("signature=", "signature=A")]
    [InlineData("?signature=", "?other=")]
    public async Task Address_IsOfNothing_WhenItWasChanged(string from, string to)
    {
        var (path, organization, _) = await GivenAsync();

        using var answer = await service.Anonymous().PostAsync(path.Replace(from, to), OneClick());

        answer.StatusCode.ShouldBe(HttpStatusCode.NotFound);
        await using var db = service.Database.Open(organization);
        (await db.NoticeChoices.CountAsync()).ShouldBe(0);
    }

    [Fact]
    public async Task Address_IsOfNothing_InAnotherOrganization()
    {
        var (path, organization, _) = await GivenAsync();
        var other = await service.Database.AddOrganizationAsync("Other");

        using var answer = await service.Anonymous().PostAsync(path.Replace($"{organization}", $"{other}"), OneClick());

        answer.StatusCode.ShouldBe(HttpStatusCode.NotFound);
    }

    [Theory]
    [InlineData(NoticeKinds.StopWork)]
    [InlineData(NoticeKinds.DoNotStart)]
    [InlineData(NoticeKinds.MissedCheckIn)]
    public void WhatKeepsPeopleFromHarm_IsNotOffered(string kind) =>
        Link(Site).Of(NewOrganization(), NewMessage(kind, Guid.NewGuid())).ShouldBeNull();

    [Fact]
    public void Link_IsNotThere_WhenNobodyKnowsWhereThePagesAre() =>
        Link(null).Of(NewOrganization(), NewMessage(NoticeKinds.GoodToCut, Guid.NewGuid())).ShouldBeNull();

    [Fact]
    public void Mail_HasTheHeadersOfRfc8058_AndALinkInTextAndHtml()
    {
        const string address = "https://woods.example.org/unsubscribe/1/2/good-to-cut?signature=abc";

        var mail = MailWriter.Of(
            NewMessage(NoticeKinds.GoodToCut, Guid.NewGuid()), "Quiet Ridge", "notices@example.org", address);

        mail.Headers[HeaderId.ListUnsubscribe].ShouldBe($"<{address}>");
        mail.Headers[HeaderId.ListUnsubscribePost].ShouldBe("List-Unsubscribe=One-Click");
        mail.TextBody!.ReplaceLineEndings("\n").ShouldBe(
            $"Good days.\n\nYou do not want mails of this kind? Turn them off here:\n{address}\n");
        mail.HtmlBody!.ShouldContain($"Turn them off here:<br><a href=\"{address}\">{address}</a></p>");
        mail.HtmlBody!.TrimEnd().ShouldEndWith("</body></html>");
    }

    private static FormUrlEncodedContent OneClick() => new([new("List-Unsubscribe", "One-Click")]);

    private static UnsubscribeLink Link(string? site) => new(Options.Create(new SiteOptions { Address = site }));

    private async Task<(string Path, Guid Organization, Guid Person)> GivenAsync()
    {
        var id = await service.Database.AddOrganizationAsync("Quiet Ridge");
        var person = await service.AddPersonAsync(id, $"{Guid.NewGuid():N}@example.org", Role.Landowner);
        await using var db = service.Database.Open(id);
        var organization = await db.Organizations.SingleAsync();
        var address = Link(Site).Of(organization, NewMessage(NoticeKinds.GoodToCut, person))!;
        return (new Uri(address).PathAndQuery, id, person);
    }

    private static Organization NewOrganization() =>
        new() { Name = "Quiet Ridge", TimeZone = "America/Detroit", PostalAddress = "1 Mill Road" };

    private Message NewMessage(string kind, Guid person) => new()
    {
        DedupeKey = "one",
        Kind = kind,
        RecipientId = person,
        ToAddress = "nell@example.org",
        Subject = "Good to cut",
        TextBody = "Good days.\n",
        HtmlBody = "<html><body><p>Good days.</p>\n</body></html>",
        MessageId = "one@example.org",
        CreatedAt = service.Clock.GetCurrentInstant(),
        NextAttemptAt = service.Clock.GetCurrentInstant(),
    };
}
