using Shouldly;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Notices.Certificates;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices.Certificates;

public sealed class CertificatesExpiringTests
{
    private static readonly Recipient Consultant =
        new(new("00000000-0000-7000-8000-00000000000c"), "Ada Birch", "ada@example.org") { IsConsultant = true };

    [Theory]
    [InlineData(61, null)]
    [InlineData(60, "60")]
    [InlineData(15, "60")]
    [InlineData(14, "14")]
    [InlineData(0, "14")]
    [InlineData(-1, "-1")]
    [InlineData(-300, "-1")]
    public void Plan_TellsTheHolderAndTheConsultants_TwoMonthsAndTwoWeeksBeforeTheEndAndAfterIt(int daysLeft, string? stage)
    {
        var plan = NightPlan.Of(Given(daysLeft));

        plan.Messages.Select(message => message.To).ShouldBe(stage is null ? [] : [Lead, Consultant]);
        plan.Topics.ShouldAllBe(topic => topic.Topic.EndsWith($":{stage}"));
    }

    [Fact]
    public void Plan_TellsEachStageOnce_AndARenewalAnew()
    {
        var first = NightPlan.Of(Given(14));

        NightPlan.Of(Given(13) with { Topics = first.Topics }).Messages.Count.ShouldBe(2, "another day is another certificate");
        NightPlan.Of(Given(14) with { Topics = first.Topics }).Messages.ShouldBeEmpty();
    }

    internal static Night Given(int daysLeft) => Of() with
    {
        Certificates = [new(TaskId, Lead.Id, Lead.Name, "first aid and CPR", Today.PlusDays(daysLeft))],
        People = new[] { Owner, Lead, Consultant }.ToDictionary(person => person.Id),
    };
}
