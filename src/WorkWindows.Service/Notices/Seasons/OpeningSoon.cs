using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Notices.Templates;

namespace WorkWindows.Service.Notices.Seasons;

/// <summary>
/// Tells landowners and crew leads, once a season and in one message, what the calendar lets begin soon.
/// </summary>
internal static class OpeningSoon
{
    /// <summary>Time to find a crew and to sharpen chains: common practice, no source.</summary>
    public const int DaysAhead = 14;

    public static void Plan(Night night, NightPlan plan)
    {
        var openings = night.Tasks.Where(task => !task.Waits)
            .Select(task => (Task: task, Edge: SeasonEdges.Opening(task.Evaluation, task.Today, DaysAhead)))
            .Where(one => one.Edge is { } edge && !(one.Task.Task.Deadline < edge.Day))
            .Select(one => new Opening(one.Task, one.Edge!.Value))
            .SelectMany(opening => opening.Task.Concerned.Select(person => (Person: person, Opening: opening)));
        foreach (var own in openings.Where(one => plan.IsNew(night, one.Person, one.Opening.Topic))
            .GroupBy(one => one.Person, one => one.Opening))
        {
            var key = $"opening-soon:{own.Key}:{night.Date:R}";
            var told = plan.Tell(night, own.Key, NoticeKinds.OpeningSoon, key, recipient => new(
                key, NoticeKinds.OpeningSoon, recipient, Notice(night, [.. own], recipient.Wishes.Scale),
                Calendar: null));
            if (told.IsTold)
                plan.Topics.UnionWith(own.Select(opening => (own.Key, opening.Topic)));
        }
    }

    private static Notice Notice(Night night, Opening[] openings, TemperatureScale scale)
    {
        var first = openings.Min(opening => opening.Edge.Day);
        var last = openings.Max(opening => opening.Edge.Day);
        return NoticeTemplates.Fill("opening-soon", new
        {
            Places = NoticeWords.Places(openings.Select(opening => opening.Task)),
            Days = first == last ? MailDays.Of(first) : $"from {MailDays.Of(first)}",
            DaysAhead,
            Tasks = openings.Select(opening => new
            {
                opening.Task.Title,
                Day = MailDays.Of(opening.Edge.Day),
                Rule = $"'{opening.Edge.Rule.Title}', {Range(opening, scale)}",
                Sources = new[] { new Item(opening.Edge.Rule.Because, Wording.Of(opening.Edge.Rule.Source)) },
                Chances = Chances(opening).ToArray(),
            }).ToArray(),
            Sender = night.Organization,
        });
    }

    private static string Range(Opening opening, TemperatureScale scale) => Reasons.Limits(
        Explanation.Of(opening.Task.Evaluation, opening.Edge.Day.PlusDays(-1)).Verdicts
            .Single(verdict => verdict.Rule == opening.Edge.Rule).Findings,
        scale);

    /// <summary>How many of the first days past years make workable.</summary>
    private static IEnumerable<string> Chances(Opening opening)
    {
        var days = new DaySpan(opening.Edge.Day, DaysAhead);
        if (opening.Task.ChancesOf?.Invoke(days) is not { Years.IsEmpty: false } chances)
            yield break;
        var shares = Enumerable.Range(0, days.Count).Select(day => chances[days[day]].Share).ToArray();
        if (shares.All(share => share is not null))
        {
            yield return $"Of its first {days.Count} days about {Math.Round(shares.Sum()!.Value)} are workable, in the "
                + $"mean of {chances.Years.Length} past years.";
        }
    }

    private sealed record Opening(TaskTonight Task, SeasonEdge Edge)
    {
        public string Topic => $"opening-soon:{Task.Task.Id}:{Edge.Rule.Id}:{Edge.Day.Year}";
    }
}
