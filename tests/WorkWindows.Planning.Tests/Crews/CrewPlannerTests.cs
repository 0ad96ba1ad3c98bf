using CsCheck;
using NodaTime;
using Shouldly;
using WorkWindows.Planning.Cases;
using WorkWindows.Planning.Checks;
using WorkWindows.Planning.Crews;
using static WorkWindows.Planning.Tests.Crews.GivenCase;

namespace WorkWindows.Planning.Tests.Crews;

public sealed class CrewPlannerTests
{
    private static readonly PlanLimits Short = new() { Workers = 1, Effort = 0.5, Seconds = 20 };

    [Fact]
    public void Plan_NeverBreaksAHardRule_InTenThousandCases() => Gen.Int[0, int.MaxValue].Sample(
        seed =>
        {
            var plan = Drawn(seed, mostTasks: 6, mostCrews: 3, mostDays: 6);

            var made = CrewPlanner.Plan(plan, Short);

            // What is set by hand may break rules; what is planned beside it breaks no other.
            PlanCheck.Broken(plan, made.Bookings).Except(PlanCheck.Broken(plan, plan.Fixed)).ShouldBeEmpty();
            plan.Fixed.Select(booking => (booking.TaskId, booking.CrewId, booking.Day, booking.Hours)).ShouldBeSubsetOf(
                made.Bookings.Select(booking => (booking.TaskId, booking.CrewId, booking.Day, booking.Hours)));
            // Of work that is set in part the rest may be left out.
            made.Bookings.Select(booking => booking.TaskId).Union(made.LeftOut.Select(left => left.TaskId))
                .ShouldBe(plan.Tasks.Select(task => task.Id), ignoreOrder: true);
            // Both are counted in thousandths of a point.
            made.Objective.ShouldBeLessThanOrEqualTo(made.Bound + 0.01);
        },
        iter: 10_000);

    [Fact]
    public void Plan_IsAsGoodAsTheBestOfAllPlans_InSmallCases() => Gen.Int[0, int.MaxValue].Sample(
        seed =>
        {
            var plan = Drawn(seed, mostTasks: 3, mostCrews: 2, mostDays: 4) with { Fixed = [] };

            var made = CrewPlanner.Plan(plan, Short);

            made.IsOptimal.ShouldBeTrue();
            made.Objective.ShouldBe(EveryPlan.Best(plan), 0.01);
        },
        iter: 3_000);

    /// <summary>More ways than a search looks at: the best of them are chosen, and the bound is that of the prices.</summary>
    [Fact]
    public void Plan_OfManyTasks_BreaksNoHardRule_IsRepeated_AndLiesUnderItsBound()
    {
        var plan = Drawn(20270203, mostTasks: 300, mostCrews: 8, mostDays: 60) with { Fixed = [] };
        var limits = new PlanLimits { Seed = 3, Workers = 2, Effort = 2, Seconds = 120 };

        var made = CrewPlanner.Plan(plan, limits);

        PlanCheck.Broken(plan, made.Bookings).ShouldBeEmpty();
        made.IsOptimal.ShouldBeFalse("not every way was looked at");
        made.Objective.ShouldBeInRange(1, made.Bound);
        made.Bookings.Select(Text).ShouldBe(CrewPlanner.Plan(plan, limits).Bookings.Select(Text));
    }

    [Fact]
    public void Plan_IsTheSame_WithTheSameSeed()
    {
        var plan = Drawn(20270201, mostTasks: 14, mostCrews: 3, mostDays: 10);
        var limits = new PlanLimits { Seed = 7, Workers = 2, Effort = 2, Seconds = 60 };

        CrewPlanner.Plan(plan, limits).Bookings.Select(Text).ShouldBe(CrewPlanner.Plan(plan, limits).Bookings.Select(Text));
    }

    [Fact]
    public void Plan_TakesTheLikelierDay_AndTheEarlierOfTwoAsLikely() =>
        Days(CrewPlanner.Plan(Of([Task("a", 4, "hwhw")], Crew("north")), Short)).ShouldBe("a:north@1");

    [Fact]
    public void Plan_SpreadsLongWorkOverTheNextWorkableDays_AndNeverUsesAClosedOne() =>
        Days(CrewPlanner.Plan(Of([Task("a", 18, "w-ww-")], Crew("north")), Short)).ShouldBe("a:north@0 a:north@2 a:north@3");

    [Fact]
    public void Plan_DoesWhatComesFirstOnAnEarlierDay() => Days(CrewPlanner.Plan(
        Of([Task("later", 2, "www") with { After = ["first"] }, Task("first", 2, "www")], Crew("north")), Short))
        .ShouldBe("first:north@0 later:north@1");

    [Fact]
    public void Plan_MovesOnlyWhatMustMove_WhenADayCloses()
    {
        PlanTask[] tasks = [Task("a", 6, "wwww"), Task("b", 6, "wwww"), Task("c", 6, "wwww")];
        var before = CrewPlanner.Plan(Of(tasks, Crew("north")), Short).Bookings;
        var closed = before.Single(booking => booking.Day == Monday.PlusDays(1)).TaskId;
        tasks = [.. tasks.Select(task => task.Id == closed ? task with { Chances = task.Chances.SetItem(1, null) } : task)];

        var after = CrewPlanner.Plan(Of(tasks, Crew("north")) with { Announced = before }, Short);

        after.Changes.ShouldBe(1);
        after.Bookings.Where(booking => booking.TaskId != closed).Select(Text)
            .ShouldBe(before.Where(booking => booking.TaskId != closed).Select(Text));
    }

    [Fact]
    public void Plan_LeavesWhatIsFixedWhereItIs_AndPlansTheRestOfIt()
    {
        var plan = Of([Task("a", 10, "wwww"), Task("b", 6, "wwww")], Crew("north"));
        var set = new Booking("a", "north", Monday.PlusDays(2), 6) { Members = ["north1", "north2"] };

        var made = CrewPlanner.Plan(plan with { Fixed = [set] }, Short);

        made.Bookings.ShouldContain(booking => booking.TaskId == "a" && booking.Day == set.Day && booking.Hours == 6);
        made.Bookings.Where(booking => booking.TaskId == "a").Sum(booking => booking.Hours).ShouldBe(10, 0.02);
        PlanCheck.Broken(plan, made.Bookings).ShouldBeEmpty();
    }

    [Fact]
    public void Plan_GivesEachCrewTheHoursThatItTakes()
    {
        // Ash and back takes 0.48 hours of the 8 of a day.
        var plan = Of([Task("a", 14, "www") with { Practice = "felling" }, Task("b", 14, "www")], Crew("north"), Quick("south", 0.5));

        var made = CrewPlanner.Plan(plan, Short).Bookings;

        made.Where(booking => booking.TaskId == "a").Select(booking => (booking.CrewId, booking.Hours)).ShouldBe([("south", 7)]);
        made.Where(booking => booking.TaskId == "b").Sum(booking => booking.Hours).ShouldBe(14, 0.02, "the pace is that of felling");
    }

    [Fact]
    public void Plan_CountsWhatAQuickCrewIsSetTo_ByWhatItDoes()
    {
        var plan = Of([Task("a", 12, "ww") with { Practice = "felling" }], Crew("north"), Quick("south", 0.5));
        var set = new Booking("a", "south", Monday, 3) { Members = ["south1", "south2"] };

        var made = CrewPlanner.Plan(plan with { Fixed = [set] }, Short);

        made.Bookings.Single(booking => booking != set).Hours.ShouldBeOneOf(3, 6);
        PlanCheck.Broken(plan, made.Bookings).ShouldBeEmpty();
        made.ExpectedBenefit.ShouldBe(120, 0.01);
    }

    [Fact]
    public void Plan_PassesOverADayThatIsSetForAnotherCrew_AndKeepsTheOthers()
    {
        var plan = Of([Task("a", 30, "wwwww") with { Deadline = Monday.PlusDays(4) }], Crew("north"), Crew("south"));
        var set = new Booking("a", "south", Monday.PlusDays(2), 6) { Members = ["south1", "south2"] };

        var made = CrewPlanner.Plan(plan with { Fixed = [set] }, Short);

        made.LeftOut.ShouldBeEmpty();
        made.Bookings.Where(booking => booking != set).Select(booking => booking.Day).ShouldNotContain(set.Day);
        PlanCheck.Broken(plan, made.Bookings).ShouldBeEmpty();
    }

    [Fact]
    public void Plan_LeavesOutWhatComesAfterWork_ThatIsSetToAClosedDay()
    {
        var plan = Of([Task("first", 6, "-www"), Task("later", 6, "wwww") with { After = ["first"] }], Crew("north"));
        var set = new Booking("first", "north", Monday, 6) { Members = ["north1", "north2"] };

        var made = CrewPlanner.Plan(plan with { Fixed = [set] }, Short);

        made.Bookings.ShouldHaveSingleItem().TaskId.ShouldBe("first");
        var left = made.LeftOut.ShouldHaveSingleItem();
        (left.TaskId, left.Because).ShouldBe(("later", LeftOutBecause.WaitsForOther));
        left.Says.ShouldContain("closed or not known");
    }

    [Fact]
    public void Plan_SendsNobodyForWhatRoundingLeaves()
    {
        var plan = Of([Task("a", 10, "wwwww")], Crew("north"));
        var set = Enumerable.Range(0, 3).Select(day => new Booking("a", "north", Monday.PlusDays(day), 3.33)
        {
            Members = ["north1", "north2"],
        });

        var made = CrewPlanner.Plan(plan with { Fixed = [.. set] }, Short);

        made.Bookings.Length.ShouldBe(3);
        made.LeftOut.ShouldBeEmpty();
        made.ExpectedBenefit.ShouldBe(100, 0.01, "what is set by hand counts like all else");
    }

    [Fact]
    public void Plan_FindsWholeDays_WhereTheHoursAndTheDriveAreNoWholeMinutes()
    {
        // Ash is 17.35 minutes from the base at these weights, there and back.
        var made = CrewPlanner.Plan(Of([Task("a", 12, "wwww")], Crew("north") with { HoursPerDay = 7.33 }), Short);

        made.LeftOut.ShouldBeEmpty();
    }

    [Fact]
    public void Plan_KeepsTheAnnouncedDaysOfWork_OfWhichADayIsSetByHand()
    {
        PlanTask[] tasks = [Task("a", 20, "hwwww"), Task("b", 6, "wwwww")];
        Booking[] told = [.. Enumerable.Range(0, 3).Select(third => new Booking("a", "north", Monday.PlusDays(2 * third), third == 2 ? 5.4 : 7.3)
        {
            Members = ["north1", "north2"],
        })];

        var made = CrewPlanner.Plan(Of(tasks, Crew("north")) with { Announced = [.. told], Fixed = [told[0]] }, Short);

        made.Changes.ShouldBeLessThanOrEqualTo(1);
    }

    public static TheoryData<LeftOutBecause, string> Reasons() => new()
    {
        { LeftOutBecause.NoWorkableDay, "closed" }, { LeftOutBecause.OutsideItsDates, "deadline" },
        { LeftOutBecause.NoCrew, "off" }, { LeftOutBecause.TooFewPeople, "five" },
        { LeftOutBecause.NoCertificate, "skill" }, { LeftOutBecause.NoEquipment, "winch" },
        { LeftOutBecause.TooFar, "far" }, { LeftOutBecause.TooLong, "long" }, { LeftOutBecause.WaitsForOther, "waits" },
        { LeftOutBecause.NotWorthIt, "worthless" }, { LeftOutBecause.CrewsFull, "full" },
    };

    [Theory, MemberData(nameof(Reasons))]
    public void Plan_SaysWhyATaskIsLeftOut(LeftOutBecause because, string what)
    {
        var task = Task("a", 4, "ww");
        var crew = Crew("north");
        var plan = what switch
        {
            "closed" => Of([task with { Chances = [null, 0] }], crew),
            "deadline" => Of([task with { Deadline = Monday.PlusDays(-1) }], crew),
            "off" => Of([task], crew with { FirstDay = Monday.PlusDays(9) }),
            "five" => Of([task with { CrewSize = 5 }], crew),
            "skill" => Of([task with { Skills = ["first aid"] }], Crew(
                "north", Member("x", new PlanCertificate("first aid", Monday.PlusDays(-1))), Member("y"))),
            "winch" => Of([task with { EquipmentKinds = ["winch"] }], crew),
            "far" => Of([task], crew) with { Travel = TravelTimes.Of([new("base", 43, -84.5), new("ash", 40, -84.5)], [], 1.3, 60) },
            "long" => Of([task with { Hours = 40 }], crew),
            "waits" => Of([task with { After = ["b"] }, Task("b", 4, "--")], crew),
            "worthless" => Of([task with { Benefit = 0.1 }], crew),
            _ => Of([task, .. Enumerable.Range(0, 2).Select(other => Task($"o{other}", 7, "ww"))], crew),
        };

        var left = CrewPlanner.Plan(plan, Short).LeftOut.Single(one => one.TaskId == "a");

        left.Because.ShouldBe(because);
        left.Says.ShouldEndWith(".");
    }

    private static PlanCrew Quick(string id, double pace) => Crew(id) with { Paces = Crew(id).Paces.Add("felling", pace) };

    private static string Text(Booking booking) =>
        $"{booking.TaskId} {booking.CrewId} {booking.Day:R} {booking.Hours:0.###} {booking.Place} {string.Join(',', booking.Members)}";

    private static string Days(CrewPlan plan) => string.Join(' ', plan.Bookings.Select(booking =>
        $"{booking.TaskId}:{booking.CrewId}@{Period.DaysBetween(Monday, booking.Day)}"));
}
