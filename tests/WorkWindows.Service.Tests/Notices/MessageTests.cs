using System.Net;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Tests.Hosting;

namespace WorkWindows.Service.Tests.Notices;

public sealed class MessageTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private Instant Now => service.Clock.GetCurrentInstant();

    [Theory]
    [InlineData("waiting")]
    [InlineData("given-up")]
    [InlineData("dropped")]
    [InlineData("sent")]
    public async Task List_ShowsEachMessageWhereItStands(string state)
    {
        var (_, machine) = await GivenAsync(
            Waiting("waiting"), Dead("given-up", GivenUp.Failed), Dead("dropped", GivenUp.Superseded), Sent("sent"));

        var row = (await machine.ReadAsync($"/api/messages?state={state}")).EnumerateArray().ShouldHaveSingleItem();

        (row.Text("subject"), row.Text("state"), row.Text("way")).ShouldBe((state, state, "mail"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("?state=Sent")]
    public async Task List_NamesTheStates_WhenNoneIsAskedFor(string query)
    {
        var (_, machine) = await GivenAsync();

        (await machine.RefusedAsync(HttpMethod.Get, $"/api/messages{query}", null, HttpStatusCode.BadRequest))
            .Error("state").ShouldContain("one of: waiting, given-up, dropped, sent");
    }

    [Fact]
    public async Task Resend_KeepsRowAndMessageId_AndIsWrittenDownOnce_WhenPressedTwice()
    {
        var dead = Dead("Stop", GivenUp.Failed);
        var (organization, machine) = await GivenAsync(dead);

        await machine.PostOkAsync($"/api/messages/{dead.Id}/resend", new { });
        var answer = await machine.PostOkAsync($"/api/messages/{dead.Id}/resend", new { });

        (answer.Text("state"), answer.Text("attempts"), answer.Text("reason")).ShouldBe(("waiting", "0", ""));
        await using var db = service.Database.Open(organization);
        var row = await db.Messages.SingleAsync();
        (row.Id, row.MessageId, row.NextAttemptAt, row.DeadAt).ShouldBe((dead.Id, dead.MessageId, Now, null));
        var entry = (await machine.ReadAsync("/api/audit?kind=message")).EnumerateArray().ShouldHaveSingleItem();
        entry.GetProperty("before").Text("state").ShouldBe("given-up");
        entry.GetProperty("after").Text("state").ShouldBe("waiting");
    }

    [Fact]
    public async Task Resend_IsAConflict_WhenALaterMessageSaysOtherwise()
    {
        var dead = Dead("Good to cut", GivenUp.Superseded);
        var (_, machine) = await GivenAsync(dead);

        var problem = await machine.RefusedAsync(
            HttpMethod.Post, $"/api/messages/{dead.Id}/resend", new { }, HttpStatusCode.Conflict);

        problem.Text("detail").ShouldBe("It is not needed any more. Because.");
    }

    [Fact]
    public async Task Resend_IsAConflict_WhenWhatItOfferedWasTakenBackAfterItWasGivenUp()
    {
        var dead = Dead("Good to cut", GivenUp.Failed);
        dead.FreeKey();
        var (_, machine) = await GivenAsync(dead);

        (await machine.RefusedAsync(
            HttpMethod.Post, $"/api/messages/{dead.Id}/resend", new { }, HttpStatusCode.Conflict))
            .Text("detail").ShouldBe("It is not needed any more: its days were taken back.");
    }

    [Fact]
    public async Task Resend_ChangesNothing_WhenTheMessageWasSent()
    {
        var sent = Sent("Stop");
        var (_, machine) = await GivenAsync(sent);

        (await machine.PostOkAsync($"/api/messages/{sent.Id}/resend", new { })).Text("state").ShouldBe("sent");
    }

    [Fact]
    public async Task Resend_IsAConflict_UntilSomebodySaysThatTheAddressWorksAgain()
    {
        var dead = Dead("Stop", GivenUp.AddressBounces);
        var (organization, machine) = await GivenAsync(dead);
        await BounceAsync(organization, dead.ToAddress);

        var problem = await machine.RefusedAsync(
            HttpMethod.Post, $"/api/messages/{dead.Id}/resend", new { }, HttpStatusCode.Conflict);
        var bounce = (await machine.ReadAsync("/api/bounces")).EnumerateArray().ShouldHaveSingleItem();
        (await machine.DeleteAsync($"/api/bounces/{bounce.Id()}")).StatusCode.ShouldBe(HttpStatusCode.NoContent);
        var answer = await machine.PostOkAsync($"/api/messages/{dead.Id}/resend", new { });

        problem.Text("detail").ShouldStartWith("There is no mailbox tom@example.org (status 5.1.1).");
        answer.Text("state").ShouldBe("waiting");
        (await machine.ReadAsync("/api/audit?kind=bouncing-address")).GetArrayLength().ShouldBe(1);
    }

    [Fact]
    public async Task Resend_GoesToThePersonsNewAddress()
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        var old = $"{Guid.NewGuid():N}@example.org";
        var person = await service.AddPersonAsync(organization, old, Role.CrewLead);
        var dead = Dead("Stop", GivenUp.AddressBounces, person, old);
        await AddAsync(organization, dead);
        await BounceAsync(organization, old);
        var machine = await service.MachineAsync(organization);
        var before = (await machine.ReadAsync("/api/people"))[0];

        var changed = await machine.PutAsync(
            $"/api/people/{person}", new { displayName = "Tom", role = "crew-lead", email = $"new.{old}" });
        var answer = await machine.PostOkAsync($"/api/messages/{dead.Id}/resend", new { });

        before.GetProperty("bounce").Text("code").ShouldBe("5.1.1");
        (changed.Text("email"), changed.Text("bounce")).ShouldBe(($"new.{old}", ""));
        (answer.Text("to"), answer.Text("address")).ShouldBe(("Tom", $"new.{old}"));
        (await service.SignInAsync($"new.{old}")).Answer.StatusCode.ShouldBe(HttpStatusCode.Redirect);
    }

    [Fact]
    public async Task Page_ShowsAMailAndItsWebhookAsOneMessage_WithWhatBecameOfEach_InWords()
    {
        var (organization, _) = await GivenAsync();
        var name = $"c.{Guid.NewGuid():N}@example.org";
        var person = await service.AddPersonAsync(organization, name, Role.Consultant);
        var mail = Sent("Stop work: Cedar Hollow", person);
        var webhook = Waiting("Stop work: Cedar Hollow", person, "https://hooks.example.org/in", NoticeChannels.Webhook);
        webhook.DedupeKey = mail.DedupeKey + Message.WebhookSuffix;
        webhook.Attempts = 10;
        webhook.GiveUp(Now, GivenUp.Failed, "webhook not reached: ConnectionError");
        await AddAsync(organization, mail, webhook);

        var html = WebUtility.HtmlDecode(await (await service.SignInAsync(name)).Client.GetStringAsync("/messages"));

        html.Split("Stop work: Cedar Hollow</h3>").Length.ShouldBe(2);
        html.ShouldContain("Nothing was sent.", customMessage: "the one message stands where something is to be done");
        html.ShouldContain("<b>By mail:</b> sent ");
        html.ShouldContain("after 10 attempts. The webhook could not be reached (ConnectionError).");
        html.ShouldContain(">Send again, by webhook</button>");
    }

    [Fact]
    public async Task Messages_AreOfTheOwnOrganization_AndForConsultants()
    {
        var dead = Dead("Stop", GivenUp.Failed);
        var (organization, _) = await GivenAsync(dead);
        var (_, stranger) = await GivenAsync();
        var lead = await service.MachineAsync(organization, Role.CrewLead);

        await lead.RefusedAsync(HttpMethod.Get, "/api/messages?state=given-up", null, HttpStatusCode.Forbidden);
        await stranger.RefusedAsync(
            HttpMethod.Post, $"/api/messages/{dead.Id}/resend", new { }, HttpStatusCode.NotFound);
    }

    private async Task<(Guid Organization, HttpClient Machine)> GivenAsync(params Message[] messages)
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        await AddAsync(organization, messages);
        return (organization, await service.MachineAsync(organization));
    }

    private async Task AddAsync(Guid organization, params Message[] messages)
    {
        await using var db = service.Database.Open(organization);
        db.AddRange(messages);
        await db.SaveChangesAsync();
    }

    private Task BounceAsync(Guid organization, string address) => InAsync(
        organization, new BouncingAddress { Address = address, Code = "5.1.1", BouncedAt = Now });

    private async Task InAsync(Guid organization, object row)
    {
        await using var db = service.Database.Open(organization);
        db.Add(row);
        await db.SaveChangesAsync();
    }

    private Message Dead(string subject, GivenUp why, Guid? person = null, string address = "tom@example.org")
    {
        var message = Waiting(subject, person, address);
        message.Attempts = 3;
        message.GiveUp(Now, why, "because");
        return message;
    }

    private Message Sent(string subject, Guid? person = null)
    {
        var message = Waiting(subject, person);
        message.SentAt = Now;
        return message;
    }

    private Message Waiting(
        string subject, Guid? person = null, string address = "tom@example.org",
        NoticeChannels way = NoticeChannels.Mail) => new()
        {
            Channel = way,
            DedupeKey = subject,
            Kind = NoticeKinds.StopWork,
            RecipientId = person,
            ToAddress = address,
            Subject = subject,
            TextBody = "Stop.\n",
            HtmlBody = "<p>Stop.</p>",
            MessageId = $"{Guid.NewGuid():N}@example.org",
            CreatedAt = Now - Duration.FromHours(1),
            NextAttemptAt = Now - Duration.FromMinutes(30),
        };
}
