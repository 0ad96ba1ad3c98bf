using System.Collections.Immutable;
using System.Text.RegularExpressions;
using WorkWindows.Engine.Practices;

namespace WorkWindows.Engine.Rules.Reading;

/// <summary>Reads one rule.</summary>
internal static partial class RuleReading
{
    private const int FirstYear = 1900;
    private const int LastYear = 2200;

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
        var scope = mapping.Required("scope", "at least one of its keys") is { } named ? ReadScope(named, packStates) : null;
        var when = mapping.Required("when", "a condition") is { } condition ? ConditionReading.Read(condition) : null;
        var because = mapping.Required("because", "one plain sentence")?.Sentence();
        var measure = mapping["measure"]?.Sentence();
        if (effect is Effect.Limits or Effect.Requires && !mapping.Has("measure"))
            mapping.Required("measure", "what must be done on such a day");
        var lifts = Lifted(mapping, effect, stack);
        var lifeSafety = mapping["life-safety"]?.OneOf(Words.YesOrNo) ?? false;
        var authority = mapping.Required("authority", string.Join(", ", Words.Authorities.Keys))
            ?.OneOf(Words.Authorities);
        var source = mapping.Required("source", "a mapping with a title") is { } cited ? ReadSource(cited) : null;
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

    /// <summary>A set of two-letter postal codes.</summary>
    public static ImmutableSortedSet<string> States(Entry? entry) =>
        Matching(entry, StateForm(), "a two-letter postal code such as MI");

    private static string? Id(Entry entry, RuleStack stack)
    {
        if (entry.MachineKey() is { } id)
            stack.Take(entry, id);
        return entry.Text;
    }

    private static Scope? ReadScope(Entry entry, ImmutableSortedSet<string> packStates)
    {
        if (entry.AsMapping("practices", "traits", "states", "counties", "area", "species", "flags", "organizations")
            is not { } mapping)
        {
            return null;
        }
        if (mapping.IsEmpty)
            entry.Refuse("at least one of its keys");
        var states = States(mapping["states"]);
        var practices = PracticeCatalogue.All.ToDictionary(practice => practice.Id, practice => practice.Id);
        return new(
            Several(mapping["practices"], item =>
            {
                if (item.Text is { } text && practices.ContainsKey(text))
                    return text;
                item.Refuse(string.Join(", ", practices.Keys));
                return null;
            }),
            mapping["traits"]?.Items().Select(item => item.OneOf(Words.Traits) ?? PracticeTraits.None)
                .Aggregate(PracticeTraits.None, (all, trait) => all | trait) ?? PracticeTraits.None,
            states.IsEmpty ? packStates : states,
            Matching(mapping["counties"], CountyForm(), "a five-digit county FIPS code in quotes, such as \"26065\""),
            [.. mapping["species"]?.Items().Select(item => item.OneOf(Words.Species) ?? default) ?? []],
            [.. mapping["flags"]?.Items().Select(item => item.OneOf(Words.Flags) ?? default) ?? []],
            Several(mapping["organizations"], item => item.Sentence()),
            mapping["area"] is { } area ? AreaReading.Read(area) : null);
    }

    private static RuleSource? ReadSource(Entry entry)
    {
        if (entry.AsMapping("title", "year", "where", "address") is not { } mapping)
            return null;
        var title = mapping.Required("title", "the name of the document")?.Sentence();
        var year = mapping["year"]?.Integer(FirstYear, LastYear);
        return title is null ? null : new(title, year, mapping["where"]?.Sentence(), mapping["address"]?.Sentence());
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

    private static ImmutableSortedSet<string> Matching(Entry? entry, Regex form, string accepted) =>
        Several(entry, item =>
        {
            if (item.Text is { } text && form.IsMatch(text))
                return text;
            item.Refuse(accepted);
            return null;
        });

    private static ImmutableSortedSet<string> Several(Entry? entry, Func<Entry, string?> read) =>
        entry is null
            ? ImmutableSortedSet.Create<string>(StringComparer.Ordinal)
            : entry.Items().Select(read).OfType<string>().ToImmutableSortedSet(StringComparer.Ordinal);

    [GeneratedRegex("^[A-Z]{2}$")]
    private static partial Regex StateForm();

    [GeneratedRegex("^[0-9]{5}$")]
    private static partial Regex CountyForm();
}
