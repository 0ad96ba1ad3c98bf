using System.Collections.Immutable;
using System.Text.Json;
using WorkWindows.Engine.Land;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>Reads the stand inventory of a feature.</summary>
internal static class StandReader
{
    private const string Form =
        "an array of at least one {\"species\", \"dbhMinIn\", \"dbhMaxIn\", \"stemsPerAcre\"}, or no stand at all";

    private static readonly string SpeciesNames =
        $"one of: {string.Join(", ", SpeciesCatalogue.All.Select(species => species.Name))}";

    public static ImmutableArray<StandRow> Read(FeatureFields fields)
    {
        var elements = fields.Array("stand", Form).ToList();
        if (elements.Count == 0 && fields.Find("stand") is { ValueKind: JsonValueKind.Array })
            fields.Fault("stand", "[]", Form);
        return [.. elements.Select((element, index) => Row($"stand[{index}]", element, fields)).OfType<StandRow>()];
    }

    private static StandRow? Row(string field, JsonElement element, FeatureFields fields)
    {
        var name = element.Member("species") is { ValueKind: JsonValueKind.String } text
            ? text.ToString().Trim()
            : null;
        var species = name is null ? null : SpeciesCatalogue.Find(name);
        if (species is null)
            fields.Fault($"{field}.species", name ?? "absent", SpeciesNames);
        var smallest = Number($"{field}.dbhMinIn", element.Member("dbhMinIn"), 0, 200, "inches", fields);
        var largest = Number($"{field}.dbhMaxIn", element.Member("dbhMaxIn"), 0, 200, "inches", fields);
        var stems = Number($"{field}.stemsPerAcre", element.Member("stemsPerAcre"), 0, 100_000, "per acre", fields);
        if (smallest > largest)
            fields.Fault($"{field}.dbhMaxIn", $"{largest}", $"at least dbhMinIn, which is {smallest}");
        return species is not null && smallest is { } min && largest is { } max && stems is { } perAcre
            ? new(species, min, max, perAcre)
            : null;
    }

    private static double? Number(
        string field, JsonElement? element, double lowest, double highest, string unit, FeatureFields fields)
    {
        if (element is { ValueKind: JsonValueKind.Number } number
            && number.GetDouble() is var value && value >= lowest && value <= highest)
            return value;
        fields.Fault(field, element?.ToString() ?? "absent", $"a number from {lowest} to {highest} ({unit})");
        return null;
    }
}
