using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Review;

/// <param name="Section">The heading that it stands under.</param>
/// <param name="What">What it says something of.</param>
/// <param name="Value">What it says.</param>
internal sealed record ReviewLine(string Section, string What, string Value);

/// <summary>A review in lines, which the report's PDF and CSV share.</summary>
internal static class ReviewLines
{
    public static IEnumerable<ReviewLine> Of(DayReview review) =>
        Decision(review)
            .Concat(review.Deciding.SelectMany(reason => Rule("What decided it", reason)))
            .Concat(review.AlsoSpoke.SelectMany(reason => Rule("What else was said", reason)))
            .Concat(review.Known.Select(known => new ReviewLine("What was known", known.What, known.Value)))
            .Concat(review.Weather.Select(known => new ReviewLine("The day's weather", known.What, known.Value)))
            .Concat(review.Packs.Select(known => new ReviewLine("Rule packs", known.What, known.Value)))
            .Concat(Since(review))
            .Concat(review.History.Select(decided => new ReviewLine(
                "What was decided about the day", review.At(decided.At), $"{Wording.Of(decided.State)}, {decided.Hash}")));

    private static string Outcome(Replay replay) =>
        replay.IsSame ? "The stored inputs give the same answer, byte for byte." : string.Join(' ', replay.Differences);

    private static IEnumerable<ReviewLine> Decision(DayReview review)
    {
        const string section = "The decision";
        yield return new(section, "Task", review.Task);
        yield return new(section, "Property", review.Property);
        yield return new(section, "Day", $"{DayWords.WithYear(review.Day)} ({review.TimeZone})");
        yield return new(section, "State", Wording.Of(review.State));
        yield return new(section, "Decided", review.At(review.DecidedAt));
        yield return new(section, "SHA-256", review.Hash);
        yield return new(section, "Evaluated again", Outcome(review.Replay));
        yield return new(section, "Report made", review.At(review.ReadAt));
    }

    private static IEnumerable<ReviewLine> Rule(string section, RuleReason reason)
    {
        yield return new(section, $"Rule: {reason.Effect}", $"{reason.Title}. {reason.Because}");
        if (reason.Measure is { } measure)
            yield return new(section, "Measure", measure);
        if (reason.Lifted is { } lifted)
            yield return new(section, "Lifted", lifted);
        foreach (var doubt in reason.Doubts)
            yield return new(section, "In doubt", doubt);
        foreach (var fact in reason.Facts)
        {
            yield return new(
                section, fact.What,
                $"{fact.Value}, limit {fact.Limit}, margin {fact.Margin}, known by: {fact.Basis}");
        }
        yield return new(section, "Source", $"{reason.Authority}: {reason.Source} {reason.Address}".TrimEnd());
    }

    private static IEnumerable<ReviewLine> Since(DayReview review)
    {
        const string section = "With what is known now";
        if (review.Since is not { } since)
            yield break;
        yield return new(section, "State", Wording.Of(since.State));
        foreach (var change in since.Changes.Concat(since.Readings))
            yield return new(section, "Changed", change);
    }
}
