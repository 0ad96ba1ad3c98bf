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
            .Where(person => person is { IsConsultant: true, Address: not null }).OrderBy(person => person.Id))
        {
            var key = $"no-address:{untold.Key}:{consultant.Id}";
            if (night.Written.Contains(key))
                continue;
            plan.Messages.Add(new(
                key, NoticeKinds.Unreachable, consultant,
                NoticeTemplates.Fill("no-address", new
                {
                    untold.To.Name,
                    untold.Notice.Subject,
                    Sender = night.Organization,
                }),
                Calendar: null));
        }
    }
}
