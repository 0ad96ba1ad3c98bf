using System.Collections.Immutable;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Rules.Reading;

/// <summary>Reads conditions.</summary>
internal static class ConditionReading
{
    public const int LongestRunDays = 60;

    private static readonly string[] Relations = [.. Words.Relations.Keys];

    /// <summary>The kinds of condition by their key, with the keys that may stand beside it.</summary>
    private static readonly Dictionary<string, string[]> Kinds = new()
    {
        ["all"] = [],
        ["any"] = [],
        ["not"] = [],
        ["calendar"] = [],
        ["alert"] = [],
        ["signal"] = [.. Relations, "days-in-a-row", "total-over-days", "starts", "ends"],
        ["degree-days"] = Relations,
        ["onset"] = ["within"],
    };

    private static readonly string[] Keys = [.. Kinds.Keys.Concat(Kinds.Values.SelectMany(keys => keys)).Distinct()];

    public static Condition? Read(Entry entry)
    {
        if (entry.AsMapping(Keys) is not { } mapping)
            return null;
        var kinds = Kinds.Keys.Where(mapping.Has).ToArray();
        if (kinds is not [var kind])
        {
            entry.Refuse($"exactly one of {string.Join(", ", Kinds.Keys)}");
            return null;
        }
        if (Keys.Except(Kinds.Keys).Except(Kinds[kind]).FirstOrDefault(mapping.Has) is { } stray)
            mapping[stray]!.Refuse($"nothing: this key does not go with {kind}");
        var part = mapping[kind]!;
        return kind switch
        {
            "all" => Parts(part) is { } parts ? new AllOf(parts) : null,
            "any" => Parts(part) is { } parts ? new AnyOf(parts) : null,
            "not" => Read(part) is { } inner ? new Not(inner) : null,
            "calendar" => CalendarReading.Range(part) is { } range ? new InRange(range) : null,
            "alert" => part.OneOf(Words.Alerts) is { } alert ? new InForce(alert) : null,
            "degree-days" => Heat(mapping, part),
            "onset" => Onset(mapping, part),
            _ => OfSignal(mapping, part),
        };
    }

    private static ImmutableArray<Condition>? Parts(Entry entry)
    {
        var parts = entry.Items().Select(Read).ToArray();
        return parts.Length == 0 || parts.Contains(null) ? null : [.. parts!];
    }

    private static Onset? Onset(Mapping mapping, Entry part)
    {
        var first = Read(part);
        var within = mapping.Required("within", "the range of dates in which it may come") is { } range
            ? CalendarReading.Range(range, allowEvents: false)
            : null;
        return first is null || within is null ? null : new(first, within);
    }

    private static HeatSince? Heat(Mapping mapping, Entry part)
    {
        if (part.AsMapping("method", "base", "upper", "since") is not { } heat)
            return null;
        var method = heat.Required("method", string.Join(", ", Words.Methods.Keys))?.OneOf(Words.Methods);
        var floor = heat.Required("base", "a temperature such as 50 degF") is { } below
            ? Quantities.Read(below, RuleUnits.Temperatures)
            : null;
        var upper = heat["upper"] is { } above ? Quantities.Read(above, RuleUnits.Temperatures) : null;
        if (upper?.InSignalUnit <= floor?.InSignalUnit)
            heat["upper"]!.Refuse("a temperature above the base");
        var since = heat.Required("since", "a month and day such as 01-01") is { } start
            ? CalendarReading.MonthDay(start)
            : null;
        var limit = Limit(mapping, RuleUnits.DegreeDays);
        return method is null || floor is null || since is null || limit is not var (relation, threshold)
            ? null
            : new(new(method.Value, floor, upper), since, relation, threshold);
    }

    private static Condition? OfSignal(Mapping mapping, Entry part)
    {
        if (part.OneOf(Words.Signals) is not { } signal)
            return null;
        if (mapping.Has("starts") || mapping.Has("ends"))
            return Latched(mapping, signal);
        if (Limit(mapping, RuleUnits.For(signal)) is not var (relation, threshold))
            return null;
        if (mapping.Has("days-in-a-row") && mapping["total-over-days"] is { } both)
            both.Refuse("either days-in-a-row or total-over-days");
        if (mapping["total-over-days"] is { } total)
        {
            if (signal != SignalKind.PrecipitationMm)
                total.Refuse("nothing: only precipitation is totalled");
            return total.Integer(2, LongestRunDays) is { } window
                ? new TotalOver(signal, window, relation, threshold)
                : null;
        }
        var compare = new Compare(signal, relation, threshold);
        return mapping["days-in-a-row"] is not { } row ? compare
            : row.Integer(2, LongestRunDays) is { } days ? new InARow(compare, days)
            : null;
    }

    private static Latched? Latched(Mapping mapping, SignalKind signal)
    {
        if (Keys.FirstOrDefault(key => key is not ("signal" or "starts" or "ends") && mapping.Has(key)) is { } stray)
            mapping[stray]!.Refuse("nothing: the limits stand under starts and ends");
        var starts = Bound(mapping, "starts", signal);
        var ends = Bound(mapping, "ends", signal);
        if (starts is null || ends is null)
            return null;
        if (!HasRoomBetween(starts, ends))
        {
            mapping["ends"]!.Refuse(
                "the other direction than starts, and a limit that does not lie past that of starts");
            return null;
        }
        return new(starts, ends);
    }

    private static Compare? Bound(Mapping mapping, string key, SignalKind signal) =>
        mapping.Required(key, "a comparison such as { at-least: 83 degC-days }") is { } entry
        && entry.AsMapping(Relations) is { } bound
        && Limit(bound, RuleUnits.For(signal)) is var (relation, threshold)
            ? new(signal, relation, threshold)
            : null;

    private static bool HasRoomBetween(Compare starts, Compare ends) => (starts.Relation, ends.Relation) switch
    {
        (Relation.AtLeast or Relation.Above, Relation.Below or Relation.AtMost) =>
            ends.Threshold.InSignalUnit <= starts.Threshold.InSignalUnit,
        (Relation.Below or Relation.AtMost, Relation.AtLeast or Relation.Above) =>
            ends.Threshold.InSignalUnit >= starts.Threshold.InSignalUnit,
        _ => false,
    };

    private static (Relation, Threshold)? Limit(Mapping mapping, IReadOnlyDictionary<string, RuleUnit> units)
    {
        if (Relations.Where(mapping.Has).ToArray() is not [var relation])
        {
            mapping.Entry.Refuse($"exactly one of {string.Join(", ", Relations)}");
            return null;
        }
        return Quantities.Read(mapping[relation]!, units) is { } threshold
            ? (Words.Relations[relation], threshold)
            : null;
    }
}
