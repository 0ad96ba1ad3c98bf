using System.Net;
using System.Text.RegularExpressions;
using Shouldly;
using Shouldly.Configuration;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Tests.Notices.Certificates;
using WorkWindows.Service.Tests.Notices.FollowUps;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices;

public sealed class NoticeTextsTests
{
    [Fact]
    public void GoodToCut_ReadsAsApproved() => Approve(NightPlan.Of(Of(Work("cooloccu"))), NoticeKinds.GoodToCut);

    [Fact]
    public void Reminder_ReadsAsApproved() => Approve(NightPlan.Of(Of(Work("clcccccc"))), NoticeKinds.Reminder);

    [Fact]
    public void DoNotStart_ReadsAsApproved() => Approve(
        NightPlan.Of(Of(Work("ocooouuu", task => task with { ScheduledOn = Today.PlusDays(1) }))),
        NoticeKinds.DoNotStart);

    [Fact]
    public void StopWork_ReadsAsApproved() => Approve(
        NightPlan.Of(Of(Work("oocuoccc")) with { Announced = [Told(0, 3)] }), NoticeKinds.StopWork);

    [Fact]
    public void OpeningSoon_ReadsAsApproved() =>
        Approve(NightPlan.Of(Of(Work("uuuuuuuu", today: new(2026, 1, 15)))), NoticeKinds.OpeningSoon);

    [Fact]
    public void ClosingEarly_ReadsAsApproved() => Approve(
        NightPlan.Of(Of(Work("cccccccc")) with
        {
            SeasonEnds = [new() { TaskId = TaskId, PersonId = Owner.Id, LastDay = new(2026, 5, 6), ToldAt = Now }],
        }),
        NoticeKinds.ClosingEarly);

    [Fact]
    public void FollowUp_ReadsAsApproved() => Approve(
        NightPlan.Of(FollowUpsDueTests.Given(
            FollowUpsDueTests.Due("tie-down", "2024-02-14", "T-9"), FollowUpsDueTests.Due("re-cut", "2021-02-14"))),
        NoticeKinds.FollowUp);

    [Fact]
    public void Certificate_ReadsAsApproved() =>
        Approve(NightPlan.Of(CertificatesExpiringTests.Given(9)), NoticeKinds.Certificate);

    [Fact]
    public void Html_EncodesWhatPeopleEntered()
    {
        var task = Work("cooccccc", task => task with { ParcelName = "<b>North</b> & \"South\"" });
        var html = NoticeHtml.Of(NightPlan.Of(Of(task)).Messages[0].Notice);

        html.ShouldContain("&lt;b&gt;North&lt;/b&gt; &amp; &quot;South&quot;");
        html.ShouldNotContain("<b>");
    }

    /// <summary>Of every kind of notice: each test that approves one asks here.</summary>
    internal static void TextAndHtmlSayTheSame(Notice notice)
    {
        var body = NoticeHtml.Of(notice).Split("<body")[1].Split('>', 2)[1];

        Words(WebUtility.HtmlDecode(Regex.Replace(body, "<[^>]*>", " ")))
            .ShouldBe(Words(Regex.Replace(NoticeText.Of(notice), @"^(-+|\* )|^  \[|\]$", " ", RegexOptions.Multiline)));
    }

    [Theory]
    [InlineData("cooccccc", "Good to cut this week: Cedar Hollow, Tue 3 – Wed 4 Feb")]
    [InlineData("cocccccc", "Good to cut this week: Cedar Hollow, Tue 3 Feb")]
    [InlineData("cococccc", "Good to cut this week: Cedar Hollow, from Tue 3 Feb")]
    public void GoodToCut_NamesPlaceAndDaysInTheSubject(string days, string subject) =>
        NightPlan.Of(Of(Work(days))).Messages[0].Notice.Subject.ShouldBe(subject);

    [Fact]
    public void GoodToCut_NamesBothMonths_WhenARunCrossesThem() =>
        NightPlan.Of(Of(Work("ooocccccc", today: new(2026, 1, 30)))).Messages[0].Notice.Subject
            .ShouldBe("Good to cut this week: Cedar Hollow, Fri 30 Jan – Sun 1 Feb");

    private static string[] Words(string text) =>
        text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries);

    private static void Approve(NightPlan plan, string kind) =>
        Approve(plan.Messages.First(message => message.Kind == kind).Notice, kind);

    internal static void Approve(Notice notice, string kind)
    {
        TextAndHtmlSayTheSame(notice);
        Approve($"Subject: {notice.Subject}\n\n{NoticeText.Of(notice)}", kind, "txt");
        Approve(NoticeHtml.Of(notice), kind, "html");
    }

    private static void Approve(string text, string kind, string extension) => text.ShouldMatchApproved(options =>
        options.WithFilenameGenerator((_, _, type, _) => $"{kind}.{type}.{extension}").NoDiff());
}
