using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Rules.Packs;

/// <summary>What one rule must say of one task on some days.</summary>
/// <param name="Where">File and line, for people.</param>
/// <param name="RuleId">The rule.</param>
/// <param name="Facts">The task.</param>
/// <param name="Days">The days asked for, each in a set of signals; a set may serve several.</param>
/// <param name="Expected">
/// An answer a day: y holds, n does not, ? cannot be known, - the rule does not speak of the task.
/// </param>
internal sealed record RuleCase(
    string Where, string RuleId, TaskFacts Facts, ImmutableArray<(SignalSet Signals, LocalDate Day)> Days,
    string Expected)
{
    /// <summary>What a rule says, with another condition in the place of its own if wanted.</summary>
    public string Answer(Rule rule, Condition when)
    {
        var applies = ScopeMatch.Of(rule.Scope, Facts);
        if (applies == Truth.Fails)
            return new('-', Days.Length);
        SignalSet? last = null;
        var truths = default(Tri);
        return string.Concat(Days.Select(asked =>
        {
            if (asked.Signals != last)
                (last, truths) = (asked.Signals, ConditionDays.Of(when, asked.Signals));
            return Letter(truths[asked.Signals.Span.IndexOf(asked.Day)], applies);
        }));
    }

    private static char Letter(Truth truth, Truth applies) => (truth, applies) switch
    {
        (Truth.Fails, _) => 'n',
        (Truth.Holds, Truth.Holds) => 'y',
        _ => '?',
    };
}
