using System.Collections.Immutable;

namespace WorkWindows.Engine.Rules.Reading;

/// <summary>The rules that a rule being read stands among: those of its own file, and those of other packs.</summary>
internal sealed class RuleStack(string? packId, PackLevel? level, ImmutableArray<RulePack>? others)
{
    private readonly HashSet<string> ownIds = [];

    /// <summary>Refuses an id that another rule has.</summary>
    public void Take(Entry entry, string id)
    {
        if (!ownIds.Add(id))
            entry.Refuse("an id that no other rule of the pack has");
        else if (others?.FirstOrDefault(pack => pack.Id != packId && pack.Rules.Any(rule => rule.Id == id)) is { } other)
            entry.Refuse($"an id that no rule of another pack has; {other.Id} has it");
    }

    /// <summary>Refuses to lift what is not there, not above, or not to be lifted.</summary>
    public void Lift(Entry entry, string id)
    {
        if (others is not { } packs || level is null)
            return;
        var (pack, rule) = packs.SelectMany(pack => pack.Rules.Select(rule => (pack, rule)))
            .FirstOrDefault(named => named.rule.Id == id);
        if (rule is null)
            entry.Refuse("the id of a rule of a higher pack");
        else if (pack.Level >= level)
            entry.Refuse($"a rule of a higher pack; {pack.Id} is not above this one");
        else if (rule.Lifts is not null)
            entry.Refuse("a rule that itself lifts none");
        else if (!rule.MayBeLifted)
            entry.Refuse(
                "a guideline, study or practice that is not about life safety: regulation and life safety stand");
    }
}
