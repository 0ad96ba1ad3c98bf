using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Tests.Storage;

namespace WorkWindows.Browser.Tests.Site;

/// <summary>A fourth invented consultancy, two of whose messages were not delivered.</summary>
internal static class MessageScenario
{
    public const string Consultant = "iris.fell@example.org";

    /// <summary>The subject of a message that the server refused ten times.</summary>
    public const string Refused = "Tomorrow: hinge cut, Harrow Brook";

    /// <summary>The subject of a message to a mailbox that does not exist.</summary>
    public const string Bounced = "Stop work: Harrow Brook, Tue 3 Feb";

    internal static async Task SeedAsync(TestDatabase database, IServiceProvider services)
    {
        var organization = await database.AddOrganizationAsync("Fell & Fern");
        await Scenario.AddPersonAsync(services, organization, Consultant, "Iris Fell", Role.Consultant);
        await using var db = database.Open(organization);
        var refused = NewMessage(NoticeKinds.Reminder, Refused, "tom@example.org", 2);
        refused.Attempts = Outbox.MaxAttempts;
        refused.GiveUp(Scenario.Now, GivenUp.Failed, "MessageNotAccepted, SMTP status 554");
        var bounced = NewMessage(NoticeKinds.StopWork, Bounced, "gone@example.org", 1);
        bounced.Attempts = 1;
        bounced.GiveUp(Scenario.Now, GivenUp.AddressBounces, "RecipientNotAccepted, SMTP status 550");
        db.AddRange(
            refused, bounced,
            new BouncingAddress { Address = "gone@example.org", Code = "550", BouncedAt = Scenario.Now });
        await db.SaveChangesAsync();
    }

    private static Message NewMessage(string kind, string subject, string address, int hoursAgo) => new()
    {
        DedupeKey = subject,
        Kind = kind,
        ToAddress = address,
        Subject = subject,
        TextBody = "Text.\n",
        HtmlBody = "<p>Text.</p>",
        MessageId = $"{Guid.NewGuid():N}@example.org",
        CreatedAt = Scenario.Now - Duration.FromHours(hoursAgo),
        NextAttemptAt = Scenario.Now,
    };
}
