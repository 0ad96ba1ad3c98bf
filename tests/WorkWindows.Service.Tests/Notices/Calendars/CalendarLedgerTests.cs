using CsCheck;
using NodaTime;
using Shouldly;
using WorkWindows.Engine.Daylight;
using WorkWindows.Service.Notices.Calendars;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices.Calendars;

/// <summary>RFC 5545, 3.8.7.4: a sequence number begins at 0 and grows with every significant revision.</summary>
public sealed class CalendarLedgerTests
{
    private static readonly CalendarEntry Entry = new(
        "a", Today, Today.PlusDays(2), "Hinge cut", "Cedar Hollow, North Forty", "America/Detroit");

    [Fact]
    public void Publish_RaisesTheSequence_OnlyWhenSomethingHasChanged()
    {
        var ledger = new CalendarLedger([], Now);
        ledger.Publish(Owner.Id, Entry).Sequence.ShouldBe(0);
        ledger.Publish(Owner.Id, Entry).Sequence.ShouldBe(0);
        ledger.Publish(Owner.Id, Entry with { Last = Today.PlusDays(3) }).Sequence.ShouldBe(1);
        ledger.Publish(Owner.Id, Entry with { Hours = new WorkShift(new(8, 0), new(17, 0)) }).Sequence.ShouldBe(2);
        ledger.Publish(Lead.Id, Entry).Sequence.ShouldBe(0);
        ledger.Added.Count.ShouldBe(2);
    }

    [Fact]
    public void Cancel_TakesBackOnce_AndPublishBringsItBackLater()
    {
        var ledger = new CalendarLedger([], Now);
        ledger.Cancel(Owner.Id, "a").ShouldBeNull();
        ledger.Publish(Owner.Id, Entry);
        ledger.Cancel(Owner.Id, "a")!.Sequence.ShouldBe(1);
        var cancelled = ledger.Cancel(Owner.Id, "a")!;
        (cancelled.IsCancelled, cancelled.Sequence).ShouldBe((true, 1));
        var again = ledger.Publish(Owner.Id, Entry);
        (again.IsCancelled, again.Sequence).ShouldBe((false, 2));
    }

    /// <summary>A program that has seen any state of an entry takes the later one over.</summary>
    [Fact]
    public void Sequence_GrowsWithEveryChangeOfWhatIsShown() =>
        Gen.Select(Gen.Int[0, 3], Gen.Bool).Array[1, 20].Sample(steps =>
        {
            var ledger = new CalendarLedger([], Now);
            var (sequence, shown) = (-1, "");
            foreach (var (length, cancels) in steps)
            {
                var day = cancels
                    ? ledger.Cancel(Owner.Id, "a")
                    : ledger.Publish(Owner.Id, Entry with { Last = Today.PlusDays(length) });
                if (day is null)
                    continue;
                var now = $"{day.Last} {day.IsCancelled}";
                (day.Sequence > sequence).ShouldBe(now != shown);
                (sequence, shown) = (day.Sequence, now);
            }
        });
}
