using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Testing;
using Shouldly;
using Shouldly.Configuration;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Tests.Storage;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices;

public sealed class DeadLetterTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private const string Gone = "gone@example.org";

    private readonly FakeClock _clock = new(Now);

    [Fact]
    public async Task UnknownMailbox_IsGivenUpAtOnce_AndLaterMailsToItAreNotSent()
    {
        var land = await GivenLand.StoreAsync(database);
        await AddAsync(land, ("first", NoticeKinds.Reminder, Gone), ("other", NoticeKinds.Reminder, "nell@example.org"));
        await using var server = new MailServer(MailServer.FreePort(), refuses: Gone);
        using var worker = Worker(server.Port);

        await worker.SendAsync(land.Organization);
        await AddAsync(land, ("second", NoticeKinds.Reminder, " Gone@Example.org"));
        await worker.SendAsync(land.Organization);

        server.Received.ShouldHaveSingleItem().Subject.ShouldBe("other");
        server.Recipients.Count(address => address == Gone).ShouldBe(1);
        await using var db = land.Open();
        foreach (var subject in new[] { "first", "second" })
        {
            var row = await db.Messages.SingleAsync(message => message.Subject == subject);
            (row.GivenUp, row.DeadAt, row.SentAt, row.Attempts).ShouldBe((GivenUp.AddressBounces, Now, null, 1));
            row.LastError!.ShouldEndWith("status 550");
        }
        var bounce = await db.BouncingAddresses.SingleAsync();
        (bounce.Address, bounce.Code, bounce.BouncedAt).ShouldBe((Gone, "550", Now));
        worker.Logs.Lines.ShouldAllBe(line => !line.Contains('@'));
    }

    [Fact]
    public async Task StopWorkToAnUnknownMailbox_IsToldToConsultants_OnceForAllThatCannotBeSent()
    {
        var land = await GivenLand.StoreAsync(database);
        await land.AddConsultantAsync();
        await AddAsync(land, ("Stop 1", NoticeKinds.StopWork, Gone));
        await using var server = new MailServer(MailServer.FreePort(), refuses: Gone);
        using var worker = Worker(server.Port);

        await worker.SendAsync(land.Organization);
        await AddAsync(land, ("Stop 2", NoticeKinds.StopWork, Gone));
        await worker.SendAsync(land.Organization);

        var told = server.Received.ShouldHaveSingleItem();
        told.Subject.ShouldBe("Not reached: gone@example.org");
        told.TextBody!.ShouldContain("Stop 1, written Mon 2 Feb 2026, 04:00 (America/Detroit).");
        told.TextBody!.ShouldContain("There is no mailbox gone@example.org, says its mail server (status 550).");
        await using var db = land.Open();
        (await db.Messages.CountAsync(message => message.GivenUp == GivenUp.AddressBounces)).ShouldBe(2);
    }

    [Fact]
    public async Task CallForACrew_IsTried_WhateverIsKnownOfTheAddress()
    {
        var land = await GivenLand.StoreAsync(database);
        await using (var db = land.Open())
        {
            db.Add(new BouncingAddress { Address = Gone, Code = "550", BouncedAt = Now });
            await db.SaveChangesAsync();
        }
        await AddAsync(land, ("No check-in", NoticeKinds.MissedCheckIn, Gone));
        await using var server = new MailServer(MailServer.FreePort());
        using var worker = Worker(server.Port);

        await worker.SendAsync(land.Organization);

        server.Received.ShouldHaveSingleItem().Subject.ShouldBe("No check-in");
    }

    [Fact]
    public async Task WaitingMail_IsNotSent_WhenItsReaderTurnsTheKindOff()
    {
        var land = await GivenLand.StoreAsync(database);
        await using (var db = land.Open())
        {
            foreach (var kind in new[] { NoticeKinds.GoodToCut, NoticeKinds.StopWork })
            {
                var message = NewMessage(kind, kind, "nell@example.org", 0, land.Owner);
                db.Add(message);
                db.Add(new NoticeChoice
                {
                    PersonId = land.Owner,
                    Kind = kind,
                    Channels = NoticeChannels.Calendar,
                    ChosenAt = Now,
                });
            }
            await db.SaveChangesAsync();
        }
        await using var server = new MailServer(MailServer.FreePort());
        using var worker = Worker(server.Port);

        await worker.SendAsync(land.Organization);

        server.Received.ShouldHaveSingleItem().Subject.ShouldBe(NoticeKinds.StopWork);
        await using var after = land.Open();
        var dropped = await after.Messages.SingleAsync(message => message.Kind == NoticeKinds.GoodToCut);
        (dropped.GivenUp, dropped.LastError).ShouldBe((GivenUp.TurnedOff, "turned off by the recipient"));
    }

    [Fact]
    public async Task Messages_LeaveInTheOrderOfTheirUrgency()
    {
        var land = await GivenLand.StoreAsync(database);
        await AddAsync(
            land,
            ("offer", NoticeKinds.GoodToCut, "a@example.org"), ("reminder", NoticeKinds.Reminder, "a@example.org"),
            ("stop", NoticeKinds.StopWork, "a@example.org"), ("fine", NoticeKinds.CrewFine, "a@example.org"),
            ("call", NoticeKinds.MissedCheckIn, "a@example.org"));
        await using var server = new MailServer(MailServer.FreePort());
        using var worker = Worker(server.Port);

        await worker.SendAsync(land.Organization);

        server.Received.Select(mail => mail.Subject).ShouldBe(["call", "fine", "stop", "offer", "reminder"]);
    }

    [Fact]
    public void Unreachable_ReadsAsApproved()
    {
        var message = NewMessage("stop", NoticeKinds.StopWork, "tom@example.org", 0);
        var notice = UnreachableNotice.Of(
            new("Quiet Ridge Consulting", "1 Mill Road, Larkspur, MI 48800"),
            DateTimeZoneProviders.Tzdb["America/Detroit"], new(message, "Tom Vance", "+1 555 0100", "5.1.1"),
            "https://woods.example.org/messages");

        NoticeTextsTests.TextAndHtmlSayTheSame(notice);
        Approve($"Subject: {notice.Subject}\n\n{NoticeText.Of(notice)}", "txt");
        Approve(NoticeHtml.Of(notice), "html");
    }

    private NoticeHost Worker(int port) => new(database, _clock, new SmtpTransport(OutboxTests.Smtp(port)));

    private static async Task AddAsync(GivenLand land, params (string Subject, string Kind, string Address)[] messages)
    {
        await using var db = land.Open();
        db.AddRange(messages.Select((one, number) => NewMessage(one.Subject, one.Kind, one.Address, number)));
        await db.SaveChangesAsync();
    }

    private static Message NewMessage(string subject, string kind, string address, int number, Guid? person = null) => new()
    {
        DedupeKey = subject,
        Kind = kind,
        RecipientId = person,
        ToAddress = address,
        Subject = subject,
        TextBody = "Stop.\n",
        HtmlBody = "<p>Stop.</p>",
        MessageId = $"{Guid.NewGuid():N}@example.org",
        CreatedAt = Now + Duration.FromMilliseconds(number),
        NextAttemptAt = Now,
    };

    private static void Approve(string text, string extension) => text.ShouldMatchApproved(options =>
        options.WithFilenameGenerator((_, _, type, _) => $"unreachable.{type}.{extension}").NoDiff());
}
