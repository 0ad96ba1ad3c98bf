using System.Collections.Immutable;
using System.Globalization;

namespace WorkWindows.Engine.Rules.Reading;

/// <summary>Reads conditions.</summary>
internal static class ConditionReading
{
    private static readonly string[] Kinds = ["all", "any", "not", "calendar", "signal"];

    private static readonly string[] Keys = [.. Kinds, .. Words.Relations.Keys, "days-in-a-row"];

    public static Condition? Read(Entry entry)
    {
        if (entry.AsMapping(Keys) is not { } mapping)
            return null;
        var kinds = Kinds.Where(mapping.Has).ToArray();
        if (kinds.Length != 1)
        {
            entry.Refuse($"exactly one of {string.Join(", ", Kinds)}");
            return null;
        }
        if (kinds[0] != "signal" && Keys.Except(Kinds).FirstOrDefault(mapping.Has) is { } stray)
            mapping[stray]!.Refuse("nothing: this key goes with signal");
        var part = mapping[kinds[0]]!;
        return kinds[0] switch
        {
            "all" => Parts(part) is { } parts ? new AllOf(parts) : null,
            "any" => Parts(part) is { } parts ? new AnyOf(parts) : null,
            "not" => Read(part) is { } inner ? new Not(inner) : null,
            "calendar" => CalendarReading.Range(part) is { } range ? new InRange(range) : null,
            _ => Comparison(mapping),
        };
    }

    private static ImmutableArray<Condition>? Parts(Entry entry)
    {
        var parts = entry.Items().Select(Read).ToArray();
        return parts.Length == 0 || parts.Contains(null) ? null : [.. parts!];
    }

    private static Condition? Comparison(Mapping mapping)
    {
        var signal = mapping["signal"]!.OneOf(Words.Signals);
        var relations = Words.Relations.Keys.Where(mapping.Has).ToArray();
        if (relations.Length != 1)
        {
            mapping.Entry.Refuse($"exactly one of {string.Join(", ", Words.Relations.Keys)}");
            return null;
        }
        var days = mapping["days-in-a-row"]?.Integer(2, 60);
        if (signal is null || Limit(mapping[relations[0]]!, RuleUnits.For(signal.Value)) is not { } threshold)
            return null;
        var compare = new Compare(signal.Value, Words.Relations[relations[0]], threshold);
        return days is { } count ? new InARow(compare, count) : compare;
    }

    private static Threshold? Limit(Entry entry, IReadOnlyDictionary<string, RuleUnit> units)
    {
        if (entry.Text?.Split(' ') is [var number, var unit]
            && double.TryParse(number, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture, out var value)
            && units.TryGetValue(unit, out var known))
        {
            return new(value, known);
        }
        entry.Refuse($"a number, a space and a unit ({string.Join(" or ", units.Keys)})");
        return null;
    }
}
