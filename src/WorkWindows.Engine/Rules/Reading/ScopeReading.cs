using System.Collections.Immutable;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;

namespace WorkWindows.Engine.Rules.Reading;

/// <summary>Reads the scope of a rule.</summary>
internal static class ScopeReading
{
    private const int CountyDigits = 5;

    public static Scope? Read(Entry entry, ImmutableSortedSet<string> packStates)
    {
        if (entry.AsMapping("practices", "traits", "states", "counties", "area", "species", "flags", "organizations")
            is not { } mapping)
        {
            return null;
        }
        if (mapping.IsEmpty)
            entry.Refuse("at least one of its keys");
        var named = States(mapping["states"]);
        var states = named.IsEmpty ? packStates : named;
        var practices = Several(mapping["practices"], Practice);
        var traits = mapping["traits"]?.Items().Select(item => item.OneOf(Words.Traits) ?? PracticeTraits.None)
            .Aggregate(PracticeTraits.None, (all, trait) => all | trait) ?? PracticeTraits.None;
        if (!practices.IsEmpty && traits != PracticeTraits.None
            && !practices.Any(id => (PracticeCatalogue.Find(id)!.Traits & traits) != 0))
        {
            mapping["traits"]!.Refuse("a trait that one of the practices has: each key of a scope must match");
        }
        return new(
            practices,
            traits,
            states,
            Several(mapping["counties"], item => County(item, states)),
            [.. mapping["species"]?.Items().Select(item => item.OneOf(Words.Species) ?? default) ?? []],
            [.. mapping["flags"]?.Items().Select(item => item.OneOf(Words.Flags) ?? default) ?? []],
            Several(mapping["organizations"], item => item.Sentence()),
            mapping["area"] is { } area ? AreaReading.Read(area) : null);
    }

    /// <summary>A set of two-letter postal codes.</summary>
    public static ImmutableSortedSet<string> States(Entry? entry) => Several(entry, item =>
    {
        if (item.Text is { } text && UsStates.FipsByPostalCode.ContainsKey(text))
            return text;
        item.Refuse("the postal code of a state such as MI");
        return null;
    });

    private static string? Practice(Entry entry)
    {
        if (entry.Text is { } text && PracticeCatalogue.Find(text) is not null)
            return text;
        entry.RefuseWord(PracticeCatalogue.All.Select(practice => practice.Id));
        return null;
    }

    private static string? County(Entry entry, ImmutableSortedSet<string> states)
    {
        var isCode = entry.Text is { Length: CountyDigits } code && code.All(char.IsAsciiDigit);
        if (!isCode)
            entry.Refuse("a five-digit county FIPS code in quotes, such as \"26065\"");
        else if (!states.IsEmpty
            && !states.Any(state => entry.Text!.StartsWith(UsStates.FipsByPostalCode[state], StringComparison.Ordinal)))
        {
            entry.Refuse("a county of the rule's states: "
                + string.Join(", ", states.Select(state => $"{UsStates.FipsByPostalCode[state]}... for {state}")));
        }
        return isCode ? entry.Text : null;
    }

    private static ImmutableSortedSet<string> Several(Entry? entry, Func<Entry, string?> read) =>
        entry is null
            ? ImmutableSortedSet.Create<string>(StringComparer.Ordinal)
            : entry.Items().Select(read).OfType<string>().ToImmutableSortedSet(StringComparer.Ordinal);
}
