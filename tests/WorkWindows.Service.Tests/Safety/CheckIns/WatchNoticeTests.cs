using NodaTime;
using Shouldly;
using Shouldly.Configuration;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Safety.CheckIns;
using WorkWindows.Service.Tests.Notices;

namespace WorkWindows.Service.Tests.Safety.CheckIns;

public sealed class WatchNoticeTests
{
    private const string Link =
        "https://woods.example.org/alarms/00000000-0000-7000-8000-00000000000c/00000000-0000-7000-8000-00000000000d?signature=c2lnbmVk";

    private static readonly WatchScene Scene = new(
        Guid.Empty, "Hinge cut, Cedar Hollow, North Forty", DateTimeZoneProviders.Tzdb["America/Detroit"], 42.7, -84.5,
        ["Tom Vance, +1 555 0100"], new("Quiet Ridge Consulting", "1 Mill Road, Larkspur, MI 48800"))
    {
        WayThere = ["Nearest address: 12 Hollow Road, Larkspur", "Sheriff: Ionia County, +1 555 0119"],
    };

    [Fact]
    public void MissedCheckIn_ReadsAsApproved() => Approve(Missed(Scene, Link), NoticeKinds.MissedCheckIn);

    [Fact]
    public void CrewFine_ReadsAsApproved() => Approve(
        CrewFineNotice.Of(Scene, Watch(), Watch().DueAt, new()
        {
            WatchId = Guid.Empty,
            Number = 1,
            Kind = CheckInKind.Fine,
            At = GivenWatch.Start + Duration.FromMinutes(80),
            By = "Tom Vance",
        }),
        NoticeKinds.CrewFine);

    [Fact]
    public void TakenOver_ReadsAsApproved()
    {
        var watch = Watch();
        var missed = new MissedCheckIn
        {
            WatchId = watch.Id,
            DueAt = watch.DueAt,
            RaisedAt = watch.CalledAt,
            NextCallAt = watch.CalledAt,
            AcknowledgedAt = watch.CalledAt + Duration.FromMinutes(4),
            AcknowledgedBy = "Ada Birch",
        };
        Approve(TakenOverNotice.Of(Scene, watch, missed), NoticeKinds.TakenOver);
    }

    [Fact]
    public void MissedCheckIn_SaysHowToTakeItOver_WhereNoLinkCanBeMade()
    {
        var text = NoticeText.Of(Missed(Scene with { Phones = [] }, link: null));

        text.ShouldContain("sign in to WorkWindows, open the task and its check-ins, and press 'I take it over'");
        text.ShouldContain("No phone number of it is stored.");
    }

    private static Notice Missed(WatchScene scene, string? link)
    {
        var watch = Watch();
        var missed = new MissedCheckIn
        {
            WatchId = watch.Id,
            DueAt = watch.DueAt,
            RaisedAt = watch.CalledAt,
            NextCallAt = watch.CalledAt,
        };
        return MissedCheckInNotice.Of(scene, watch, missed, 0, watch.CalledAt + Duration.FromMinutes(10), link);
    }

    private static CrewWatch Watch() => GivenWatch.Of(Guid.Empty, null, "nell@example.org");

    private static void Approve(Notice notice, string kind)
    {
        NoticeTextsTests.TextAndHtmlSayTheSame(notice);
        Approve($"Subject: {notice.Subject}\n\n{NoticeText.Of(notice)}", kind, "txt");
        Approve(NoticeHtml.Of(notice), kind, "html");
    }

    private static void Approve(string text, string kind, string extension) => text.ShouldMatchApproved(options =>
        options.WithFilenameGenerator((_, _, type, _) => $"{kind}.{type}.{extension}").NoDiff());
}
