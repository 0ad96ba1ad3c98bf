using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Practices;
using WorkWindows.Service.Notices.Templates;

namespace WorkWindows.Service.Notices.FollowUps;

/// <summary>Work that completed work on a parcel asks for and that has not been done since.</summary>
/// <param name="TaskId">The completed task.</param>
/// <param name="FollowUp">What it asks for.</param>
/// <param name="CompletedOn">When it was completed.</param>
/// <param name="PropertyName">Its property.</param>
/// <param name="ParcelName">Its parcel.</param>
/// <param name="Planned">The key of a task on the parcel that would do it, or null.</param>
public sealed record DueFollowUp(
    Guid TaskId, FollowUp FollowUp, LocalDate CompletedOn, string PropertyName, string ParcelName, string? Planned);

/// <summary>Tells consultants, in one message, of work whose time begins or runs out.</summary>
internal static class FollowUpsDue
{
    /// <summary>Days before the first and the last day: common practice, no source.</summary>
    public const int DaysBefore = 30;

    public static void Plan(Night night, NightPlan plan)
    {
        var due = night.FollowUps.Select(one => (Due: one, Topic: Topic(one, night.Date)))
            .Where(one => one.Topic is not null).ToList();
        var consultants = night.People.Values.Where(person => person.IsConsultant).OrderBy(person => person.Id);
        foreach (var consultant in consultants)
        {
            var news = due.FindAll(one => plan.IsNew(night, consultant.Id, one.Topic!));
            if (news.Count == 0)
                continue;
            var key = $"follow-up:{consultant.Id}:{night.Date:R}";
            var told = plan.Tell(night, consultant.Id, NoticeKinds.FollowUp, key, recipient => new(
                key, NoticeKinds.FollowUp, recipient, Notice(night, news.ConvertAll(one => one.Due)), Calendar: null));
            if (told.IsTold)
                plan.Topics.UnionWith(news.Select(one => (consultant.Id, one.Topic!)));
        }
    }

    private static string? Topic(DueFollowUp due, LocalDate today)
    {
        var (from, to) = due.FollowUp.Due(due.CompletedOn);
        var stage = today >= to.PlusDays(-DaysBefore) ? "ends" : today >= from.PlusDays(-DaysBefore) ? "begins" : null;
        return stage is null ? null : $"follow-up:{due.TaskId}:{due.FollowUp.Practice.Id}:{stage}";
    }

    private static Notice Notice(Night night, List<DueFollowUp> news) => NoticeTemplates.Fill("follow-up", new
    {
        Places = NoticeWords.Places(news.Select(due => due.PropertyName)),
        Items = news.Select(due => Of(due, night.Date)).ToArray(),
        Sender = night.Organization,
    });

    private static object Of(DueFollowUp due, LocalDate today)
    {
        var (from, to) = due.FollowUp.Due(due.CompletedOn);
        var (first, last) = (Wording.Of(from), Wording.Of(to));
        return new
        {
            Title = $"{due.FollowUp.Practice.Name}, {due.PropertyName}, {due.ParcelName}",
            Done = $"{due.FollowUp.After.Name} was completed on {Wording.Of(due.CompletedOn)}. "
                + due.FollowUp.Because,
            Due = today > to ? $"It was due from {first} until {last}: that time is over."
                : $"It is due from {first} until {last} (common practice, no source).",
            Planned = due.Planned is { } key ? $"It is planned as {key}, and not done." : "It is not planned.",
        };
    }
}
