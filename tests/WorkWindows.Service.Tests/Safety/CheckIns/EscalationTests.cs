using CsCheck;
using NodaTime;
using Shouldly;
using WorkWindows.Service.Safety.CheckIns;

namespace WorkWindows.Service.Tests.Safety.CheckIns;

public sealed class EscalationTests
{
    private static readonly Instant Due = Instant.FromUtc(2026, 2, 2, 15, 0);

    /// <summary>Due at 15:00 with a grace of 15 minutes, three contacts, ten minutes from one to the next.</summary>
    private static readonly WatchTimes Watch = new(Minutes(60), Minutes(15), Minutes(10), 3, Due, null);

    [Theory]
    [InlineData(0, 0, "", null)]
    [InlineData(14, 0, "", null)]
    [InlineData(15, 0, "0", 25)]          // grace is over at its last minute
    [InlineData(24, 1, "", 25)]
    [InlineData(25, 1, "1", 35)]
    [InlineData(35, 2, "2", 45)]
    [InlineData(45, 3, "0", 55)]          // and round again
    [InlineData(36, 0, "0 1 2", 45)]      // late: all who should know by now
    [InlineData(300, 0, "0 1 2", 310)]    // very late: each once, and not twenty-nine mails
    [InlineData(300, 2, "2 0 1", 310)]    // going on where it stopped
    public void Plan_WritesToTheNextContact(int minutesAfterDue, int written, string places, int? next)
    {
        var alarm = written == 0 ? null : new AlarmTimes(written, Due + Minutes(15 + (10 * written)));

        var plan = Escalation.Plan(Watch with { Alarm = alarm }, Due + Minutes(minutesAfterDue));

        string.Join(' ', plan.Calls.Select(call => call.Place)).ShouldBe(places);
        plan.NextCallAt.ShouldBe(next is { } minutes ? Due + Minutes(minutes) : null);
        plan.DueAt.ShouldBe(Due);
    }

    [Theory]
    [InlineData(-60, 0)]      // just checked in
    [InlineData(-61, -1)]     // set back by a minute
    [InlineData(-1440, -1380)] // set back by a day: due an interval from now, and not tomorrow
    public void Plan_BringsTheDueTimeForward_WhenTheClockWasSetBack(int minutesAfterDue, int dueAfter) =>
        Escalation.Plan(Watch, Due + Minutes(minutesAfterDue)).DueAt.ShouldBe(Due + Minutes(dueAfter));

    [Fact]
    public void Plan_BringsTheNextCallForward_WhenTheClockWasSetBackDuringAnEscalation()
    {
        var plan = Escalation.Plan(Watch with { Alarm = new(1, Due + Minutes(25)) }, Due - Minutes(600));

        plan.Calls.ShouldBeEmpty();
        plan.NextCallAt.ShouldBe(Due - Minutes(590));
    }

    // Rounds come at any distance, are repeated, die before they have stored anything, and the clock jumps back.
    [Fact]
    public void Rounds_WriteEachCallOnceAndSkipNone_WhateverHappensToThem()
    {
        var watches = Gen.Select(
            Gen.Int[5, 240], Gen.Int[0, 60], Gen.Int[1, 60], Gen.Int[1, 6],
            (interval, grace, escalation, contacts) =>
                new WatchTimes(Minutes(interval), Minutes(grace), Minutes(escalation), contacts, Due, null));
        var rounds = Gen.Select(
            Gen.Frequency((8, Gen.Int[0, 90]), (2, Gen.Int[1, 3]), (1, Gen.Int[-500, -1])), Gen.Int[0, 3]).Array[1, 60];

        Gen.Select(watches, rounds).Sample((watch, all) =>
        {
            var stored = new Stored(watch);
            var now = Due - Minutes(watch.Interval.TotalMinutes is var minutes ? (int)minutes : 0);
            foreach (var (step, fate) in all)
            {
                now += Minutes(step);
                if (fate == 0)
                    _ = Escalation.Plan(stored.Watch, now); // killed before it stored anything
                else
                    stored.Run(now);
                if (fate == 1 && stored.Run(now) != 0)
                    return false; // a repeat at the same moment writes nothing
            }
            return stored.Calls.Select((call, index) => (call.Number, call.Place) == (index, index % watch.Contacts))
                .All(isNext => isNext);
        });
    }

    [Fact]
    public void Rounds_CallNobodyLateOrEarly_WhenTheyComeEachMinute() =>
        Gen.Select(Gen.Int[0, 60], Gen.Int[1, 60], Gen.Int[1, 6], Gen.Int[0, 59]).Sample((
            grace, escalation, contacts, seconds) =>
        {
            var stored = new Stored(Watch with
            {
                Grace = Minutes(grace),
                Escalation = Minutes(escalation),
                Contacts = contacts,
            });
            for (var minute = 0; minute < 600; minute++)
            {
                var now = Due + Minutes(minute) + Duration.FromSeconds(seconds);
                stored.Run(now);
                var expected = now < Due + Minutes(grace)
                    ? 0 : 1 + (int)((now - Due - Minutes(grace)).TotalMinutes / escalation);
                if (stored.Calls.Count != expected)
                    return false;
            }
            return true;
        });

    // However late it comes, a round leaves nobody of the first circle unwritten to whose time has passed.
    [Fact]
    public void ALateRound_WritesToEverybodyWhoseTimeHasPassed() =>
        Gen.Select(Gen.Int[1, 60], Gen.Int[1, 6], Gen.Int[0, 5000]).Sample((escalation, contacts, late) =>
        {
            var plan = Escalation.Plan(
                Watch with { Escalation = Minutes(escalation), Contacts = contacts }, Due + Minutes(15 + late));
            return plan.Calls.Length == Math.Min(contacts, 1 + (late / escalation))
                && plan.NextCallAt > Due + Minutes(15 + late);
        });

    private static Duration Minutes(int minutes) => Duration.FromMinutes(minutes);

    /// <summary>What the database would hold.</summary>
    private sealed class Stored(WatchTimes watch)
    {
        public WatchTimes Watch { get; private set; } = watch;

        public List<PlannedCall> Calls { get; } = [];

        public int Run(Instant now)
        {
            var plan = Escalation.Plan(Watch, now);
            Calls.AddRange(plan.Calls);
            Watch = Watch with
            {
                DueAt = plan.DueAt,
                Alarm = plan.NextCallAt is { } next ? new(Calls.Count, next) : null,
            };
            return plan.Calls.Length;
        }
    }
}
