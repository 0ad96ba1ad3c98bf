using System.Net;
using System.Text;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Tests.Hosting;

namespace WorkWindows.Service.Tests.Notices;

/// <summary>Reports of delivery, in the form of the examples of RFC 3464, appendix E.</summary>
public sealed class BounceTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Ours = "0190aa@example.org";

    [Theory]
    [InlineData("failed", "5.1.1", "given-up", "address-bounces", "5.1.1")]
    [InlineData("FAILED", "5.1.1 (user unknown)", "given-up", "address-bounces", "5.1.1")]
    [InlineData("failed", null, "given-up", "address-bounces", "5.0.0")]
    [InlineData("failed", "5.2.2", "given-up", "failed", null)]
    [InlineData("failed", "4.4.7", "given-up", "failed", null)]
    [InlineData("delayed", "4.4.1", "sent", "", null)]
    [InlineData("relayed", "2.0.0", "sent", "", null)]
    [InlineData("delivered", "2.0.0", "sent", "", null)]
    public async Task Report_MarksOnlyWhatHasFailed(string action, string? status, string state, string why, string? code)
    {
        var (organization, machine) = await SentAsync(NoticeKinds.Reminder);

        var answer = await PostAsync(machine, Report(action, status), "message/rfc822");
        var again = await PostAsync(machine, Report(action, status), "message/rfc822");

        (answer.Text("state"), answer.Text("givenUp")).ShouldBe((state, why));
        again.Text("givenUpAt").ShouldBe(answer.Text("givenUpAt"));
        await using var db = service.Database.Open(organization);
        (await db.BouncingAddresses.Select(bounce => bounce.Code).SingleOrDefaultAsync()).ShouldBe(code);
    }

    [Theory]
    [InlineData("whole mail")]
    [InlineData("headers")]
    [InlineData("envelope")]
    public async Task Report_IsFoundByEachNameThatItMayGiveTheMail(string named)
    {
        var (_, machine) = await SentAsync(NoticeKinds.Reminder);

        var answer = await PostAsync(machine, Report("failed", "5.1.1", named), "message/rfc822");

        answer.Text("state").ShouldBe("given-up");
    }

    [Fact]
    public async Task Report_MayBeTheBodyAlone()
    {
        var (_, machine) = await SentAsync(NoticeKinds.Reminder);
        var (head, body) = Report("failed", "5.1.1").Split("\r\n\r\n", 2) is [var first, var rest] ? (first, rest) : default;

        var answer = await PostAsync(
            machine, body, "multipart/report; report-type=delivery-status; boundary=\"RAA14128\"");

        head.ShouldContain("RAA14128");
        answer.Text("state").ShouldBe("given-up");
    }

    [Fact]
    public async Task FailedStopWork_IsToldToConsultants()
    {
        var (organization, machine) = await SentAsync(NoticeKinds.StopWork);
        await service.AddPersonAsync(organization, $"{Guid.NewGuid():N}@example.org", Role.Consultant);

        await PostAsync(machine, Report("failed", "5.1.1"), "message/rfc822");

        await using var db = service.Database.Open(organization);
        (await db.Messages.SingleAsync(message => message.Kind == NoticeKinds.Unreachable)).Subject
            .ShouldBe("Not reached: tom@example.org");
    }

    [Fact]
    public async Task Report_IsNotDone_WhenNoMessageIsNamed()
    {
        var (_, machine) = await SentAsync(NoticeKinds.Reminder);

        var problem = await PostAsync(
            machine, Report("failed", "5.1.1").Replace(Ours, "other@example.org"), "message/rfc822",
            HttpStatusCode.UnprocessableEntity);

        problem.Text("detail").ShouldContain("It names: other@example.org.");
    }

    [Theory]
    [InlineData("Subject: out of office\r\n\r\nI am away.\r\n")]
    [InlineData("{}")]
    [InlineData("")]
    public async Task AnythingElse_IsRefusedWithWhatIsAccepted(string content)
    {
        var (_, machine) = await SentAsync(NoticeKinds.Reminder);

        var problem = await PostAsync(machine, content, "message/rfc822", HttpStatusCode.BadRequest);

        problem.Text("detail").ShouldStartWith("Send a report of failed delivery (RFC 3464)");
    }

    [Fact]
    public async Task Report_IsForbidden_ToOthersThanConsultants()
    {
        var (organization, _) = await SentAsync(NoticeKinds.Reminder);
        var crew = await service.MachineAsync(organization, Role.CrewLead);

        await PostAsync(crew, Report("failed", "5.1.1"), "message/rfc822", HttpStatusCode.Forbidden);
    }

    private async Task<(Guid Organization, HttpClient Machine)> SentAsync(string kind)
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        await using var db = service.Database.Open(organization);
        db.Add(new Message
        {
            DedupeKey = "one",
            Kind = kind,
            ToAddress = "tom@example.org",
            Subject = "Stop",
            TextBody = "Stop.\n",
            HtmlBody = "<p>Stop.</p>",
            MessageId = Ours,
            CreatedAt = service.Clock.GetCurrentInstant() - Duration.FromHours(1),
            NextAttemptAt = service.Clock.GetCurrentInstant(),
            SentAt = service.Clock.GetCurrentInstant(),
        });
        await db.SaveChangesAsync();
        return (organization, await service.MachineAsync(organization));
    }

    private static async Task<JsonElement> PostAsync(
        HttpClient client, string report, string contentType, HttpStatusCode status = HttpStatusCode.OK)
    {
        using var content = new ByteArrayContent(Encoding.UTF8.GetBytes(report));
        content.Headers.TryAddWithoutValidation("Content-Type", contentType);
        using var answer = await client.PostAsync("/api/bounces", content);
        var body = await answer.Content.ReadAsStringAsync();
        answer.StatusCode.ShouldBe(status, body);
        return JsonSerializer.Deserialize<JsonElement>(body);
    }

    private static string Report(string action, string? status, string named = "whole mail") => $"""
        From: Mail Delivery Subsystem <MAILER-DAEMON@mail.example.org>
        To: notices@example.org
        Message-Id: <199407072116.RAA14128@mail.example.org>
        Subject: Returned mail: Cannot send message for 5 days
        MIME-Version: 1.0
        Content-Type: multipart/report; report-type=delivery-status; boundary="RAA14128"

        --RAA14128

        The original message was received at Sat, 2 Jul 1994 17:10:28 -0400

        --RAA14128
        content-type: message/delivery-status

        {(named == "envelope" ? $"Original-Envelope-Id: {Ours.Replace("@", "+40")}\n" : "")}Reporting-MTA: dns; mail.example.org

        Original-Recipient: rfc822;tom@example.org
        Final-Recipient: rfc822;tom@example.org
        Action: {action}
        {(status is null ? "" : $"Status: {status}\n")}Diagnostic-Code: smtp; 426 connection timed out

        --RAA14128
        content-type: {(named == "headers" ? "text/rfc822-headers" : "message/rfc822")}

        Subject: Stop
        {(named == "envelope" ? "" : $"Message-ID: <{Ours}>\n")}From: notices@example.org

        Stop.
        --RAA14128--

        """.ReplaceLineEndings("\r\n");
}
