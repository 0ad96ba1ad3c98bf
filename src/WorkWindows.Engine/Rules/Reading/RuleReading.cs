using System.Collections.Immutable;

namespace WorkWindows.Engine.Rules.Reading;

/// <summary>Reads one rule.</summary>
internal static class RuleReading
{
    public const int FirstYear = 1900;
    public const int LastYear = 2200;

    private const string NoSource = "common practice";

    public static Rule? Read(Entry entry, ImmutableSortedSet<string> packStates, RuleStack stack)
    {
        if (entry.AsMapping("id", "title", "effect", "lifts", "scope", "when", "because", "measure", "authority",
                "life-safety", "source", "valid") is not { } mapping)
        {
            return null;
        }
        var id = mapping.Required("id", "a key such as oak-wilt.high-risk") is { } key ? Id(key, stack) : null;
        var title = mapping.Required("title", "a few words for people")?.Sentence();
        var effect = mapping.Required("effect", string.Join(", ", Words.Effects.Keys))?.OneOf(Words.Effects);
        var scope = mapping.Required("scope", "at least one of its keys") is { } named
            ? ScopeReading.Read(named, packStates)
            : null;
        var when = mapping.Required("when", "a condition") is { } condition ? ConditionReading.Read(condition) : null;
        var because = mapping.Required("because", "one plain sentence")?.Sentence();
        var measure = mapping["measure"]?.Sentence();
        if (effect is Effect.Limits or Effect.Requires && !mapping.Has("measure"))
            mapping.Required("measure", "what must be done on such a day");
        var lifts = Lifted(mapping, effect, stack);
        var lifeSafety = mapping["life-safety"]?.OneOf(Words.YesOrNo) ?? false;
        var authority = mapping.Required("authority", string.Join(", ", Words.Authorities.Keys))
            ?.OneOf(Words.Authorities);
        var source = mapping.Required("source", "a mapping with a title") is { } cited
            ? ReadSource(cited, authority)
            : null;
        var valid = mapping["valid"] is { } years ? ReadYears(years) : new(null, null);
        return id is null || title is null || effect is null || scope is null || when is null || because is null
            || authority is null || source is null || valid is null
            ? null
            : new(id, title, effect.Value, scope, when, because, measure, authority.Value, source, valid, lifeSafety,
                lifts);
    }

    private static string? Lifted(Mapping mapping, Effect? effect, RuleStack stack)
    {
        if (effect != Effect.Lifts)
        {
            mapping["lifts"]?.Refuse("nothing: this key goes with the effect lifts");
            return null;
        }
        if (mapping.Required("lifts", "the id of a rule of a higher pack") is not { } entry || entry.Sentence() is not { } id)
            return null;
        stack.Lift(entry, id);
        return id;
    }

    private static string? Id(Entry entry, RuleStack stack)
    {
        if (entry.MachineKey() is { } id)
            stack.Take(entry, id);
        return entry.Text;
    }

    private static RuleSource? ReadSource(Entry entry, Authority? authority)
    {
        if (entry.AsMapping("title", "year", "where", "address") is not { } mapping)
            return null;
        var title = mapping.Required("title", "the name of the document")?.Sentence();
        if (title is not null && authority is not (null or Authority.CommonPractice)
            && title.StartsWith(NoSource, StringComparison.OrdinalIgnoreCase))
        {
            mapping["title"]!.Refuse("the name of a document: only common-practice goes without one");
        }
        var year = mapping["year"]?.Integer(FirstYear, LastYear);
        return title is null ? null : new(title, year, mapping["where"]?.Sentence(), Address(mapping["address"]));
    }

    private static string? Address(Entry? entry)
    {
        if (entry is null)
            return null;
        if (Uri.TryCreate(entry.Text, UriKind.Absolute, out var address) && address.Scheme is "https" or "http")
            return entry.Text;
        entry.Refuse("an address that begins with https:// or http://");
        return null;
    }

    private static ValidYears? ReadYears(Entry entry)
    {
        if (entry.AsMapping("from", "to") is not { } mapping)
            return null;
        var years = new ValidYears(
            mapping["from"]?.Integer(FirstYear, LastYear), mapping["to"]?.Integer(FirstYear, LastYear));
        if (years.To < years.From)
            mapping["to"]!.Refuse("a year that is not before from");
        return years;
    }
}
