using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Safety.Checklists;

/// <summary>Whether a crew may begin a task on a day.</summary>
public enum ReleaseState
{
    /// <summary>The lead has signed the list as it stands.</summary>
    Released,

    NotSigned,

    /// <summary>What was signed is not what the list says now.</summary>
    ChangedSinceSigned,

    /// <summary>The day is closed or not known: no signature releases it.</summary>
    NotWorkable,

    Over,
}

/// <summary>Whether a crew may begin a task on a day, and why not.</summary>
/// <param name="State">Whether it may.</param>
/// <param name="Statement">The same in one or more sentences.</param>
public sealed record Release(ReleaseState State, string Statement)
{
    public bool IsReleased => State == ReleaseState.Released;

    /// <summary>Whether a signature would release it.</summary>
    public bool AwaitsSignature => State is ReleaseState.NotSigned or ReleaseState.ChangedSinceSigned;

    /// <summary>
    /// The crew lead's signature counts, or that of a consultant who says why they release it in the lead's place;
    /// where no crew lead is set, that of any consultant.
    /// </summary>
    /// <param name="task">The task.</param>
    /// <param name="leadName">The name of who leads it on that day, where somebody does.</param>
    /// <param name="explanation">Of the day.</param>
    /// <param name="today">The day that it is in the property's zone.</param>
    /// <param name="version">The version of the list as it stands.</param>
    /// <param name="signed">The signatures of the task and day, in the order in which they were received.</param>
    public static Release Of(
        TaskSummary task, string? leadName, Explanation explanation, LocalDate today, string version,
        IEnumerable<SignedVersion> signed)
    {
        if (explanation.Day < today)
            return new(ReleaseState.Over, "The day is over: nothing is released for it any more.");
        if (explanation.State is DayState.Closed or DayState.Unknown)
        {
            var statement = DayStatement.Of(explanation, today);
            return new(
                ReleaseState.NotWorkable,
                $"Cannot be released. {statement.Headline}. {string.Join(' ', statement.Reasons)}");
        }
        var lead = task.LeadOn(explanation.Day);
        var counting = signed.Where(one => lead is not null
            ? one.PersonId == lead || one is { ByConsultant: true, InsteadBecause: not null }
            : one.ByConsultant).ToList();
        if (counting.Find(one => one.Version == version) is { } valid)
        {
            return new(
                ReleaseState.Released,
                $"Released: {valid.Person} signed the checklist {DayWords.At(valid.SignedAt, task.Zone)}"
                + $"{Instead(lead, leadName, valid)}.");
        }
        if (counting is [.., var last])
        {
            return new(
                ReleaseState.ChangedSinceSigned,
                $"Not released: the checklist has changed since {last.Person} signed it "
                + $"{DayWords.At(last.SignedAt, task.Zone)}.");
        }
        return new(ReleaseState.NotSigned, lead is null
            ? "Not released: no crew lead is set, and no consultant has signed the checklist."
            : $"Not released: the crew lead, {leadName}, has not signed the checklist.");
    }

    private static string Instead(Guid? lead, string? leadName, SignedVersion signed) =>
        signed.InsteadBecause is { } why && lead is not null && lead != signed.PersonId
            ? $", in place of the crew lead, {leadName}: {why.TrimEnd('.')}"
            : "";
}
