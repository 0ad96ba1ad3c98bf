using NodaTime;
using Shouldly;
using WorkWindows.Planning.Cases;
using WorkWindows.Planning.Checks;
using static WorkWindows.Planning.Tests.Crews.GivenCase;

namespace WorkWindows.Planning.Tests.Checks;

/// <summary>Each hard rule, broken by one booking or two, and kept by the same ones otherwise.</summary>
public sealed class PlanCheckTests
{
    private static readonly PlanMember Ann = Member("ann", new PlanCertificate("first aid", Monday));
    private static readonly PlanMember Bo = Member("bo") with { DaysOff = [Monday.PlusDays(2)] };

    private static readonly PlanTask Work = Task("a", 6, "www-") with
    {
        NotBefore = Monday,
        Deadline = Monday.PlusDays(2),
        EquipmentKinds = ["winch"],
    };

    private static readonly PlanCase Plan = Of(
        [Work, Task("b", 4, "wwww") with { After = ["a"] }, Task("c", 4, "wwww")],
        Crew("north", Ann, Bo), Crew("south", Ann, Member("cy"), Member("di"))) with
    {
        Equipment = [new() { Id = "w1", Kind = "winch" }, new() { Id = "w2", Kind = "winch", CrewId = "south" }],
        TooClose = [new("a", "c")],
    };

    [Fact]
    public void Broken_FindsNothing_WhereAllIsWell() => PlanCheck.Broken(
        Plan, [North("a", 0) with { EquipmentIds = ["w1"] }, North("b", 1), South("c", 1)]).ShouldBeEmpty();

    public static TheoryData<HardRule, string> Cases() => new()
    {
        { HardRule.ClosedDay, "a closed day" }, { HardRule.BeforeFirstDay, "too early" }, { HardRule.AfterDeadline, "too late" },
        { HardRule.DayOff, "a member off" }, { HardRule.DayOff, "the crew off" }, { HardRule.NotOfTheCrew, "a stranger" },
        { HardRule.TooFewPeople, "one person" }, { HardRule.NoCertificate, "an expired certificate" },
        { HardRule.NoEquipment, "no winch" }, { HardRule.NoEquipment, "the winch of others" },
        { HardRule.PersonTwice, "one person in two crews" }, { HardRule.EquipmentTwice, "one winch in two crews" },
        { HardRule.TooClose, "two crews close to each other" }, { HardRule.TooClose, "two crews at one job" },
        { HardRule.OutOfOrder, "the same day" },
        { HardRule.OutOfOrder, "half of what comes first" }, { HardRule.DayTooLong, "eight hours and a drive" },
        { HardRule.TooManyHours, "the work twice" }, { HardRule.TooManyHours, "all hours by a quick crew" },
        { HardRule.OutOfOrder, "all hours of what comes first by a slow crew" },
    };

    [Theory, MemberData(nameof(Cases))]
    public void Broken_NamesTheRule(HardRule rule, string what)
    {
        var winch = North("a", 0) with { EquipmentIds = ["w1"] };
        var (plan, bookings) = what switch
        {
            "a closed day" => (Plan, new[] { North("a", 3) }),
            "too early" => (With(Work with { NotBefore = Monday.PlusDays(1) }), [winch]),
            "too late" => (With(Work with { Deadline = Monday.PlusDays(-1) }), [winch]),
            "a member off" => (Plan, [North("c", 2)]),
            "the crew off" => (Plan with { Crews = [Plan.Crews[0] with { FirstDay = Monday.PlusDays(1) }, Plan.Crews[1]] }, [winch]),
            "a stranger" => (Plan, [North("c", 0) with { Members = ["ann", "bo", "zed"] }]),
            "one person" => (Plan, [North("c", 0) with { Members = ["ann"] }]),
            "an expired certificate" => (With(Work with { Skills = ["first aid"] }), [North("a", 1) with { EquipmentIds = ["w1"] }]),
            "no winch" => (Plan, [North("a", 0)]),
            "the winch of others" => (Plan, [North("a", 0) with { EquipmentIds = ["w2"] }]),
            "one person in two crews" => (Plan, [North("c", 1), South("b", 1) with { Members = ["ann", "cy"] }]),
            "one winch in two crews" => (Plan, [winch, South("c", 0) with { EquipmentIds = ["w1"] }]),
            "two crews close to each other" => (Plan, [winch, South("c", 0)]),
            "two crews at one job" => (Plan, [North("c", 0) with { Hours = 2 }, South("c", 0) with { Hours = 2 }]),
            "the same day" => (Plan, [winch, North("b", 0) with { Place = 1 }]),
            "half of what comes first" => (Plan, [winch with { Hours = 3 }, North("b", 1)]),
            "eight hours and a drive" => (Plan, [North("c", 0) with { Hours = 8 }]),
            "all hours by a quick crew" => (Paced(0.5), [winch]),
            "all hours of what comes first by a slow crew" => (Paced(2), [winch, North("b", 1)]),
            _ => (Plan, new[] { winch, North("a", 1) with { EquipmentIds = ["w1"] } }),
        };

        PlanCheck.Broken(plan, bookings).Select(broken => broken.Rule).ShouldContain(rule);
    }

    private static PlanCase Paced(double pace) => With(Work with { Practice = "felling" }) with
    {
        Crews = [Plan.Crews[0] with { Paces = Plan.Crews[0].Paces.Add("felling", pace) }, Plan.Crews[1]],
    };

    private static PlanCase With(PlanTask task) => Plan with { Tasks = [task, .. Plan.Tasks.Skip(1)] };

    private static Booking North(string task, int day) => new(task, "north", Monday.PlusDays(day), task == "a" ? 6 : 4)
    {
        Members = ["ann", "bo"],
    };

    private static Booking South(string task, int day) => new(task, "south", Monday.PlusDays(day), 4)
    {
        Members = ["cy", "di"],
    };
}
