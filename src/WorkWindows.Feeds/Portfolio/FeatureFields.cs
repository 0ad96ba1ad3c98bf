using System.Text.Json;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>Reads the properties of one feature, and reports each that is wrong.</summary>
internal sealed class FeatureFields(JsonElement properties, int? line, string? item, FaultCollector faults)
{
    public JsonElement? Find(string name) =>
        properties.Member(name) is { ValueKind: not JsonValueKind.Null } value ? value : null;

    /// <returns>The trimmed text, or null with a fault.</returns>
    public string? Required(string name, Func<string, bool> isAccepted, string accepted)
    {
        if (Find(name) is not null)
            return Optional(name, isAccepted, accepted);
        Fault(name, "absent", accepted);
        return null;
    }

    /// <returns>The trimmed text, or null if it is absent, or null with a fault if it is not accepted.</returns>
    public string? Optional(string name, Func<string, bool> isAccepted, string accepted)
    {
        if (Find(name) is not { } value)
            return null;
        var text = value.ValueKind == JsonValueKind.String ? value.ToString().Trim() : null;
        if (text is not null && isAccepted(text))
            return text;
        Fault(name, value.ToString(), accepted);
        return null;
    }

    /// <returns>
    /// The number, or null if it is absent, or null with a fault if it is none or outside the bounds.
    /// </returns>
    public double? Number(string name, double lowest, double highest, string unit)
    {
        if (Find(name) is not { } value)
            return null;
        if (value.ValueKind == JsonValueKind.Number && value.GetDouble() is var number && number >= lowest && number <= highest)
            return number;
        Fault(name, value.ToString(), $"a number from {lowest} to {highest} ({unit}), or nothing");
        return null;
    }

    /// <returns>The members of an array; none if it is absent, or with a fault if it is no array.</returns>
    public IEnumerable<JsonElement> Array(string name, string accepted)
    {
        if (Find(name) is not { } value)
            return [];
        if (value.ValueKind == JsonValueKind.Array)
            return value.EnumerateArray();
        Fault(name, value.ToString(), accepted);
        return [];
    }

    public void Fault(string field, string value, string accepted) => faults.Add(line, field, value, accepted, item);
}
