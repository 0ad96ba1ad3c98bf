using NodaTime;
using Shouldly;
using WorkWindows.Engine.Safety;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Safety.Checklists;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices;

public sealed class RemindersTests
{
    private static readonly Recipient Member = new(
        new("00000000-0000-7000-8000-00000000000d"), "Una Pike", "una@example.org");
    private static readonly Recipient Other = new(
        new("00000000-0000-7000-8000-00000000000e"), "Ben Marsh", "ben@example.org");

    [Theory]
    [InlineData("oooccccc", 1, NoticeKinds.Reminder)]
    [InlineData("clcccccc", 1, NoticeKinds.Reminder)]
    [InlineData("occccccc", 1, NoticeKinds.DoNotStart)]
    [InlineData("oucccccc", 1, NoticeKinds.DoNotStart)]
    [InlineData("oooccccc", 0, null)]
    [InlineData("oooccccc", 2, null)]
    public void Plan_TellsTheCrewLead_TheDayBeforeTheWorkIsScheduled(string days, int scheduled, string? kind)
    {
        var plan = NightPlan.Of(Of(Work(days, task => task with { ScheduledOn = Today.PlusDays(scheduled) })));

        plan.Messages.Where(message => message.To == Lead).Select(message => message.Kind)
            .ShouldBe(kind is null ? [] : [kind]);
    }

    [Theory]
    [InlineData("cooccccc", 1, 2, true)]   // tomorrow the announced window opens
    [InlineData("oooccccc", 0, 2, false)]  // it opened today
    [InlineData("ccoccccc", 2, 2, false)]  // it opens the day after
    public void Plan_TellsTheCrewLead_TheDayBeforeAnAnnouncedWindowOpens(string days, int first, int last, bool told)
    {
        var plan = NightPlan.Of(Of(Work(days)) with { Announced = [Told(first, last)] });

        plan.Messages.Count(message => message is { Kind: NoticeKinds.Reminder }).ShouldBe(told ? 1 : 0);
    }

    [Fact]
    public void Plan_TellsTheCrewLead_WhenTheWindowThatOpensTomorrowIsAnnouncedTonight() =>
        NightPlan.Of(Of(Work("coocccccc"))).Messages.Select(message => (message.Kind, message.To.Name))
            .ShouldBe([(NoticeKinds.GoodToCut, Owner.Name), (NoticeKinds.Reminder, Lead.Name)]);

    [Fact]
    public void Plan_RemembersTheDay_SoThatItsEndCanBeToldToTheCrewLead()
    {
        var plan = NightPlan.Of(Of(Work("cooccccc")));

        Runs(plan.Announced.Where(window => window.PersonId == Lead.Id)).ShouldBe("1-1");
        plan.Messages.Single(message => message.To == Lead).Key
            .ShouldBe($"reminder:{TaskId}:2026-02-03:{Lead.Id}");
    }

    [Fact]
    public void Plan_TellsNobodyTwice_WhenTheReminderWasWritten()
    {
        var night = Of(Work("cooccccc")) with
        {
            Announced = [Told(1, 2)],
            Written = new HashSet<string> { $"reminder:{TaskId}:2026-02-03:{Lead.Id}" },
        };

        NightPlan.Of(night).Messages.ShouldBeEmpty();
    }

    [Fact]
    public void Plan_RemindsNobody_WhenNoCrewLeadIsSet() =>
        NightPlan.Of(Of(Work("cooccccc", task => task with { CrewLeadId = null })))
            .Messages.ShouldAllBe(message => message.To == Owner);

    [Fact]
    public void Plan_TellsEverybodyWhoIsBooked_TheDayBefore()
    {
        var night = Of(Work("ooocccccc") with
        {
            Booked = [(Today.PlusDays(1), Member.Id), (Today.PlusDays(1), Lead.Id), (Today.PlusDays(2), Other.Id)],
        });
        night = night with { People = new[] { Owner, Lead, Member, Other }.ToDictionary(person => person.Id) };

        NightPlan.Of(night).Messages.Where(message => message.Kind == NoticeKinds.Reminder)
            .Select(message => message.To.Name).ShouldBe([Lead.Name, Member.Name]);
    }

    [Fact]
    public void Plan_TellsTheLeadOfTheCrewThatIsBooked_AndNotThatOfAnotherDay()
    {
        var night = Of(Work("ooocccccc", task => task with
        {
            BookedLeads = new Dictionary<LocalDate, Guid> { [Today] = Lead.Id, [Today.PlusDays(1)] = Other.Id },
        }) with
        {
            Booked = [(Today.PlusDays(1), Member.Id), (Today.PlusDays(1), Other.Id)],
        });
        night = night with { People = new[] { Owner, Lead, Member, Other }.ToDictionary(person => person.Id) };

        NightPlan.Of(night).Messages.Where(message => message.Kind == NoticeKinds.Reminder)
            .Select(message => message.To.Name).ShouldBe([Other.Name, Member.Name]);
    }

    [Fact]
    public void Plan_TellsEverybodyWhoIsBooked_NotToStartOnADayThatIsClosed()
    {
        var night = Of(Work("occcccccc") with { Booked = [(Today.PlusDays(1), Member.Id)] });
        night = night with { People = new[] { Owner, Lead, Member }.ToDictionary(person => person.Id) };

        NightPlan.Of(night).Messages.Where(message => message.Kind == NoticeKinds.DoNotStart)
            .Select(message => message.To.Name).ShouldBe([Lead.Name, Member.Name]);
    }

    [Fact]
    public void Plan_WaitsForTheDayThatIsBooked_WhereAnAnnouncedWindowOpensBeforeIt()
    {
        var night = Of(Work("cooocccc") with { Booked = [(Today.PlusDays(3), Member.Id)] }) with { Announced = [Told(1, 3)] };

        NightPlan.Of(night).Messages.ShouldNotContain(message => message.Kind == NoticeKinds.Reminder);
    }

    [Fact]
    public void Reminder_SaysWhatMustBeDoneFirst()
    {
        var task = Work("cooccccc", task => task with { ScheduledOn = Today.PlusDays(1), WaitsFor = ["Trail opening"] });

        NoticeText.Of(NightPlan.Of(Of(task)).Messages.Single(message => message.To == Lead).Notice).ShouldContain(
            "Waits for: Trail opening. It is not recorded as done. Do not begin before it is done.");
    }

    [Fact]
    public void Reminder_HoldsEveryItemOfTheChecklistWithItsSource()
    {
        var task = Work("cooccccc");
        var text = NoticeText.Of(NightPlan.Of(Of(task)).Messages.Single(message => message.To == Lead).Notice);

        var checklist = SafetyChecklist.For(SafetyScene.Of(task.Evaluation, Today.PlusDays(1)));
        checklist.Items.ShouldContain(item => item.Text.StartsWith("Wind to 5 mph, gusts to 10 mph."));
        foreach (var item in checklist.Items)
            text.ShouldContain($"* {item.Statement}\n  [{item.Source}");
    }

    [Theory]
    [InlineData(null, "Not released: the crew lead, Tom Vance, has not signed the checklist.")]
    [InlineData("an earlier one", "Not released: the checklist has changed since Tom Vance signed it Mon 2 Feb 2026, 4:00.")]
    [InlineData("", "Released: Tom Vance signed the checklist Mon 2 Feb 2026, 4:00.")]
    public void Reminder_SaysWhetherTheChecklistIsSigned_AndWhereToSign(string? version, string statement)
    {
        var task = Work("cooccccc");
        var tomorrow = Today.PlusDays(1);
        var now = SafetyChecklist.For(SafetyScene.Of(task.Evaluation, tomorrow)).Version;
        SignedVersion[] signed = version is null
            ? []
            : [new(TaskId, tomorrow, version.Length == 0 ? now : version, Lead.Id, Lead.Name, ByConsultant: false, Now)];
        var night = Of(task) with
        {
            Signed = signed.ToLookup(one => (one.TaskId, one.Day)),
            SiteAddress = "https://woods.example.org/",
        };

        var text = NoticeText.Of(NightPlan.Of(night).Messages.Single(message => message.To == Lead).Notice);

        text.ShouldContain(statement);
        text.Contains($"https://woods.example.org/tasks/{TaskId}/checklist?date=2026-02-03").ShouldBe(version != "");
    }
}
