using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Notices.Templates;

namespace WorkWindows.Service.Notices;

/// <summary>Which days are taken back, why, and which still stand.</summary>
internal static class StopWorkNotice
{
    /// <summary>For those to whom the days were named.</summary>
    public static Notice Of(
        Night night, TaskTonight task, IReadOnlyList<LocalDate> withdrawn, IReadOnlyList<Window> standing,
        TemperatureScale scale) => Of(night, task, withdrawn, standing, wereNamed: true, scale);

    /// <summary>For those who are at work today, though nobody named the day to them.</summary>
    public static Notice AtWork(Night night, TaskTonight task, TemperatureScale scale) =>
        Of(night, task, [task.Today], [], wereNamed: false, scale);

    private static Notice Of(
        Night night, TaskTonight task, IReadOnlyList<LocalDate> withdrawn, IReadOnlyList<Window> standing,
        bool wereNamed, TemperatureScale scale) => NoticeTemplates.Fill("stop-work", new
        {
            WereNamed = wereNamed,
            task.Title,
            Days = MailDays.Of(StopWork.Runs(withdrawn)),
            Withdrawn = Reasons.Alike(withdrawn, day => Withdrawn.Of(task.Evaluation, day, scale), Withdrawn.Same)
                .Select(run => new { Date = MailDays.Of(run.Days), run.Said.State, run.Said.Why }).ToArray(),
            Stands = standing.Count > 0
                ? $"Workable as told before: {MailDays.Of(standing)}. The calendar entry is taken back as a whole."
                : NoticeWords.Next(task, withdrawn[^1]),
            Forecast = NoticeWords.Forecast(task),
            Sender = night.Organization,
        });

    /// <summary>What is said of a day that is taken back.</summary>
    private sealed record Withdrawn(string State, Item[] Why)
    {
        public static Withdrawn Of(TaskEvaluation evaluation, LocalDate day, TemperatureScale scale) =>
            new(Wording.Of(evaluation[day]), Reasons.Deciding(evaluation, day, scale));

        public static bool Same(Withdrawn one, Withdrawn other) =>
            one.State == other.State && one.Why.SequenceEqual(other.Why);
    }
}
