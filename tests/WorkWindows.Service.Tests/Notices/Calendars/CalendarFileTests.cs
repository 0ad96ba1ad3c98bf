using System.Text;
using Ical.Net;
using NodaTime;
using Shouldly;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Notices.Calendars;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices.Calendars;

public sealed class CalendarFileTests
{
    private static readonly MailOptions Sender = new() { From = "notices@example.org" };

    [Fact]
    public void OfNotice_GivesOneWholeDayEventARun()
    {
        var calendar = Calendar.Load(Text(NightPlan.Of(Of(Work("coocccol")))))!;

        calendar.Method.ShouldBe("PUBLISH");
        calendar.Events.Select(e => (e.Start!.Date, e.End!.Date)).ShouldBe(
            [(new(2026, 2, 3), new(2026, 2, 5)), (new DateOnly(2026, 2, 8), new DateOnly(2026, 2, 10))]);
        calendar.Events.ShouldAllBe(e => e.IsAllDay);
        var first = calendar.Events[0]!;
        first.Uid.ShouldBe($"{TaskId:N}-20260203@example.org");
        first.Summary.ShouldBe("Hinge cut");
        first.Location.ShouldBe("Cedar Hollow, North Forty");
        first.Organizer!.Value.ShouldBe(new Uri("mailto:notices@example.org"));
    }

    [Fact]
    public void OfNotice_CancelsTheSameEventWithAHigherSequence()
    {
        var ledger = new CalendarLedger([], Now);
        var entry = NightPlan.Of(Of(Work("cooccccc"))).Messages[0].Calendar!.Entries[0];
        var published = Calendar.Load(CalendarFile.OfNotice([ledger.Publish(Owner.Id, entry)], Sender))!.Events[0]!;
        var cancelled = Calendar.Load(CalendarFile.OfNotice([ledger.Cancel(Owner.Id, entry.Key)!], Sender))!;

        var cancellation = cancelled.Events[0]!;
        cancelled.Method.ShouldBe("CANCEL");
        cancellation.Uid.ShouldBe(published.Uid);
        cancellation.Status.ShouldBe("CANCELLED");
        cancellation.Sequence.ShouldBeGreaterThan(published.Sequence);
    }

    [Fact]
    public void OfNotice_WritesFoldedLinesEndingWithCrLf()
    {
        var task = Work(
            "cooccccc", task => task with { ParcelName = string.Concat(Enumerable.Repeat("Ørsted's bog; ", 12)) });
        var text = Text(NightPlan.Of(Of(task)));

        text.Replace("\r\n", "").ShouldNotContain('\n');
        text.Split("\r\n").ShouldAllBe(line => Encoding.UTF8.GetByteCount(line) <= 75);
        Calendar.Load(text)!.Events[0]!.Location!.ShouldEndWith("Ørsted's bog; ");
    }

    private static string Text(NightPlan plan)
    {
        var ledger = new CalendarLedger([], Now);
        return CalendarFile.OfNotice(
            [.. plan.Messages[0].Calendar!.Entries.Select(entry => ledger.Publish(Owner.Id, entry))], Sender);
    }
}
