using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Notices.Templates;

namespace WorkWindows.Service.Notices;

/// <summary>Tells consultants that somebody who must be told something cannot be written to.</summary>
internal static class NoAddress
{
    /// <param name="night">What is known.</param>
    /// <param name="plan">What is said.</param>
    /// <param name="untold">What the person is not told.</param>
    public static void Tell(Night night, NightPlan plan, NoticeDraft untold)
    {
        foreach (var consultant in night.People.Values
            .Where(person => person.IsConsultant).OrderBy(person => person.Id))
        {
            var key = $"no-address:{untold.Key}:{consultant.Id}";
            if (night.Written.Contains(key))
                continue;
            var draft = new NoticeDraft(
                key, NoticeKinds.Unreachable, consultant,
                NoticeTemplates.Fill("no-address", new
                {
                    untold.To.Name,
                    untold.Notice.Subject,
                    Sender = night.Organization,
                }),
                Calendar: null);
            if (consultant.Address is not null)
                plan.Messages.Add(draft);
            if (consultant.Wishes.Webhook is not null)
                plan.Messages.Add(draft with { Channel = NoticeChannels.Webhook });
        }
    }
}
