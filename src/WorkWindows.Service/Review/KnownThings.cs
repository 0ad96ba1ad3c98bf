using NodaTime;
using WorkWindows.Engine.Decisions;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Review;

/// <summary>The words of what an evaluation rested on.</summary>
internal static class KnownThings
{
    private const int HashShown = 12;

    /// <summary>Forecast, what was seen, exceptions and the rule packs that decided.</summary>
    public static IEnumerable<Known> Of(TaskEvaluation then, LocalDate day, DateTimeZone zone)
    {
        yield return new("Forecast", then.Signals.ForecastIssued is { } issued
            ? $"issued {DayWords.At(issued, zone)}"
            : "none was known");
        var seen = Seen(then.Signals, day).DefaultIfEmpty(new("Seen on the property", "nothing was recorded"));
        foreach (var known in seen)
            yield return known;
        var exceptions = then.Facts.Overrides.Where(made => made.First <= day && day <= made.Last)
            .Select(made => new Known(
                $"Exception to '{Replays.TitlesOf(then)(made.RuleId)}'",
                $"by {made.By} until {Wording.Of(made.Last)}: {made.Reason}"))
            .DefaultIfEmpty(new("Exceptions", "none was in force"));
        foreach (var known in exceptions)
            yield return known;
        foreach (var pack in Explanation.Of(then, day).Deciding.Select(verdict => verdict.Pack).Distinct())
            yield return Of(pack);
    }

    /// <summary>All rule packs that stood.</summary>
    public static IEnumerable<Known> PacksOf(TaskEvaluation then) => then.Packs.Select(Of);

    /// <summary>The day's values, those that nobody knew included.</summary>
    public static IEnumerable<Known> WeatherOf(TaskEvaluation then, LocalDate day) =>
        then.Signals.Signals.Keys.Select(kind =>
            new Known(Wording.Of(kind), Wording.Of(kind, Reading.Of(then.Signals, kind, day))));

    private static Known Of(RulePack pack) =>
        new($"Rule pack {pack.Title}", $"version {pack.Version}, SHA-256 {pack.Hash[..HashShown]}…");

    private static IEnumerable<Known> Seen(SignalSet signals, LocalDate day) =>
        signals.Events.Where(e => e.Basis == Basis.SiteObservation && e.Date.Year == day.Year)
            .Select(e => new Known($"{Wording.Of(e.Kind)} {e.Date.Year}", $"{Wording.Of(e.Date)} ({Wording.Of(e.Basis)})"))
            .Concat(
                from kind in signals.Signals.Keys
                let reading = Reading.Of(signals, kind, day)
                where reading.Basis == Basis.SiteObservation
                select new Known(Wording.Of(kind), Wording.Of(kind, reading)));
}
