using System.Collections.Immutable;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Chances;
using WorkWindows.Service.Notices.Templates;

namespace WorkWindows.Service.Notices;

/// <summary>Which days of the week are good, why, and what would stop it.</summary>
internal static class GoodToCutNotice
{
    /// <summary>How many days after the coming week past years are asked about.</summary>
    private const int DaysAfter = 14;

    private const PracticeTraits Cutting =
        PracticeTraits.FellsTrees | PracticeTraits.WoundsTrees | PracticeTraits.ChainSaw;

    public static Notice Of(Night night, ImmutableArray<TaskNews> news, TemperatureScale scale) =>
        NoticeTemplates.Fill("good-to-cut", new
        {
            Good = news.Any(one => (one.Task.Task.Practice.Traits & Cutting) != 0) ? "Good to cut" : "Good to work",
            Places = NoticeWords.Places(news.Select(one => one.Task)),
            Days = Days(news),
            Today = MailDays.Of(night.Date),
            Tasks = news.Select(one => Of(one, scale)).ToArray(),
            Sender = night.Organization,
        });

    private static object Of(TaskNews news, TemperatureScale scale)
    {
        var (task, runs) = news;
        return new
        {
            task.Title,
            Days = runs.SelectMany(run => Reasons.Days(task.Evaluation, run, scale)).ToArray(),
            Season = Reasons.Season(task.Evaluation, runs[^1].Last, scale),
            Chances = Chances(task).ToArray(),
            Forecast = NoticeWords.Forecast(task),
            WouldStop = Reasons.WouldStop(task.Evaluation, runs[^1].Last, scale),
        };
    }

    /// <summary>Each unknown day of the week, and how many of the days after it past years make workable.</summary>
    private static IEnumerable<string> Chances(TaskTonight task)
    {
        var week = DaySpan.Between(task.Today, task.Today.PlusDays(Night.DaysAhead));
        var after = new DaySpan(week.Last.PlusDays(1), DaysAfter);
        if (task.ChancesOf?.Invoke(DaySpan.Between(week.First, after.Last)) is not { Years.IsEmpty: false } chances)
            yield break;
        for (var day = week.First; day <= week.Last; day = day.PlusDays(1))
        {
            if (task.Evaluation[day] == DayState.Unknown)
                yield return $"{ChanceWords.Of(day, chances[day], task.Today)}.";
        }
        var shares = Enumerable.Range(0, after.Count).Select(day => chances[after[day]].Share).ToArray();
        if (shares.All(share => share is not null))
        {
            yield return $"{MailDays.Of(new Window(after.First, after.Last))}: about "
                + $"{Math.Round(shares.Sum()!.Value)} of {after.Count} days workable, in the mean of "
                + $"{chances.Years.Length} past years.";
        }
    }

    private static string Days(ImmutableArray<TaskNews> news)
    {
        var runs = news.SelectMany(one => one.Runs).Distinct().ToList();
        return runs.Count == 1 ? MailDays.Of(runs[0]) : $"from {MailDays.Of(runs.Min(run => run.First))}";
    }
}
