using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Decisions;

/// <summary>What a later evaluation of a task says otherwise than a stored decision, and why.</summary>
/// <param name="Days">The runs of days that have another state, ascending.</param>
/// <param name="Rules">What rules say otherwise of these days.</param>
/// <param name="Readings">The readings of these days, of what those rules look at, that are others.</param>
/// <param name="Events">The events of nature that are dated otherwise, where those rules look at them.</param>
/// <param name="Others">What else is not as it was: rule packs and exceptions, a sentence each.</param>
public sealed record DecisionDifference(
    ImmutableArray<StateChange> Days,
    ImmutableArray<RuleChange> Rules,
    ImmutableArray<ReadingChange> Readings,
    ImmutableArray<EventChange> Events,
    ImmutableArray<string> Others)
{
    /// <param name="content">The stored decision's content.</param>
    /// <param name="before">The signals that it was made from.</param>
    /// <param name="now">The later evaluation.</param>
    /// <param name="asked">The days to compare, as far as both speak of them.</param>
    public static DecisionDifference Between(
        ReadOnlyMemory<byte> content, SignalSet before, TaskEvaluation now, DaySpan asked)
    {
        using var document = JsonDocument.Parse(content);
        var decision = StoredDecision.Of(document.RootElement);
        var days = StatesOf(decision, now, asked).ToImmutableArray();
        var rules = days.SelectMany(run => RulesOf(decision, now, run)).ToImmutableArray();
        var conditions = now.Rules.Where(rule => rules.Any(change => change.RuleId == rule.Rule.Id))
            .Select(rule => rule.Rule.When).ToArray();
        return new(
            days,
            rules,
            [.. days.SelectMany(run => ReadingsOf(before, now.Signals, run, conditions)).Distinct()],
            [.. EventsOf(before, now.Signals, conditions)],
            [.. decision.OthersThan(now)]);
    }

    private static IEnumerable<StateChange> StatesOf(StoredDecision decision, TaskEvaluation now, DaySpan asked)
    {
        StateChange? run = null;
        var first = LocalDate.Max(asked.First, LocalDate.Max(decision.Days.First, now.Span.First));
        var last = LocalDate.Min(asked.Last, LocalDate.Min(decision.Days.Last, now.Span.Last));
        for (var day = first; day <= last; day = day.PlusDays(1))
        {
            var (was, isNow) = (decision.StateOn(day), now[day]);
            if (run is { } open && open.Before == was && open.After == isNow)
            {
                run = open with { Last = day };
                continue;
            }
            if (run is not null)
                yield return run;
            run = was == isNow ? null : new(day, day, was, isNow);
        }
        if (run is not null)
            yield return run;
    }

    private static IEnumerable<RuleChange> RulesOf(StoredDecision decision, TaskEvaluation now, StateChange run)
    {
        var index = now.IndexOf(run.First);
        // Packs of different hands may give two rules one id: the decision keeps them together, too.
        var rules = now.Rules.ToLookup(rule => rule.Rule.Id, rule => rule.On(index))
            .ToDictionary(same => same.Key, same => StoredDecision.Worst(same));
        foreach (var id in rules.Keys.Union(decision.RuleIds))
        {
            var (was, isNow) = (decision.TruthOf(id, run.First), rules.GetValueOrDefault(id, Truth.Fails));
            if (was != isNow)
                yield return new(id, run.First, was, isNow);
        }
    }

    private static IEnumerable<ReadingChange> ReadingsOf(
        SignalSet before, SignalSet now, StateChange run, IReadOnlyCollection<Condition> conditions)
    {
        foreach (var kind in Enum.GetValues<SignalKind>()
            .Where(kind => conditions.Any(condition => ConditionParts.Mentions(condition, kind))))
        {
            var (was, isNow) = (Reading.Of(before, kind, run.First), Reading.Of(now, kind, run.First));
            if (was != isNow)
                yield return new(kind, run.First, was, isNow);
        }
    }

    private static IEnumerable<EventChange> EventsOf(
        SignalSet before, SignalSet now, IReadOnlyCollection<Condition> conditions) =>
        from kind in Enum.GetValues<SeasonEventKind>()
        where conditions.Any(condition => ConditionParts.Mentions(condition, kind))
        from year in before.Events.Concat(now.Events).Select(e => e.Date.Year).Distinct().Order()
        let was = before.Event(kind, year)
        let isNow = now.Event(kind, year)
        where was?.Date != isNow?.Date
        select new EventChange(kind, year, was, isNow);
}

/// <summary>Days, both ends included, that have another state.</summary>
public sealed record StateChange(LocalDate First, LocalDate Last, DayState Before, DayState After);

/// <summary>What a rule says otherwise of the first day of a change.</summary>
public sealed record RuleChange(string RuleId, LocalDate Day, Truth Before, Truth After);

/// <summary>A value and how it is known; null is not known.</summary>
public sealed record Reading(double? Value, Basis Basis)
{
    /// <summary>What a signal says of a day; not known outside its span.</summary>
    public static Reading Of(SignalSet signals, SignalKind kind, LocalDate day) =>
        signals[kind] is { } signal && signals.Span.Contains(day)
        && signal.Bases[signals.Span.IndexOf(day)] is var basis and not Basis.Missing
            ? new(signal.Values[signals.Span.IndexOf(day)], basis)
            : new(null, Basis.Missing);
}

/// <summary>A reading of a day that is another, in the unit of the signal.</summary>
public sealed record ReadingChange(SignalKind Kind, LocalDate Day, Reading Before, Reading After);

/// <summary>An event of a year that is dated otherwise; null is not known.</summary>
public sealed record EventChange(SeasonEventKind Kind, int Year, SeasonEvent? Before, SeasonEvent? After);
