using System.Text.Json.Nodes;

namespace WorkWindows.Engine.Rules.Reading;

/// <summary>The pieces that a JSON Schema (draft 2020-12) is put together from.</summary>
internal static class Schemas
{
    public static JsonObject Sentence(string description) =>
        new() { ["description"] = description, ["type"] = "string", ["minLength"] = 1 };

    public static JsonObject Matching(string pattern, string description) =>
        new() { ["description"] = description, ["type"] = "string", ["pattern"] = pattern };

    public static JsonObject Integer(int min, int max, string description) =>
        new() { ["description"] = description, ["type"] = "integer", ["minimum"] = min, ["maximum"] = max };

    public static JsonObject Number(double min, double max) =>
        new() { ["type"] = "number", ["minimum"] = min, ["maximum"] = max };

    public static JsonObject OneOf(IEnumerable<string> words, string description) =>
        new() { ["description"] = description, ["enum"] = Array(words) };

    public static JsonObject List(JsonNode items, string description, int atLeast = 1) =>
        new() { ["description"] = description, ["type"] = "array", ["minItems"] = atLeast, ["items"] = items };

    public static JsonObject Ref(string definition) => new() { ["$ref"] = $"#/$defs/{definition}" };

    public static JsonObject Ref(string definition, string description) =>
        new() { ["description"] = description, ["$ref"] = $"#/$defs/{definition}" };

    /// <summary>A mapping with these keys and no others.</summary>
    public static JsonObject Mapping(
        string description, string[] required, params (string Key, JsonNode Value)[] keys) =>
        new()
        {
            ["description"] = description,
            ["type"] = "object",
            ["properties"] = new JsonObject(keys.Select(key => KeyValuePair.Create(key.Key, (JsonNode?)key.Value))),
            ["required"] = Array(required),
            ["additionalProperties"] = false,
        };

    /// <summary>A mapping must have exactly one of these keys.</summary>
    public static JsonObject WithOneOf(this JsonObject mapping, IEnumerable<string> keys)
    {
        mapping["oneOf"] = new JsonArray([.. keys.Select(key => new JsonObject { ["required"] = Array([key]) })]);
        return mapping;
    }

    /// <summary>
    /// Where a key has one of some values, another key is required, and where it has not, that one may not stand there.
    /// </summary>
    public static JsonObject Requires(string key, IEnumerable<string> values, string needed, bool onlyThen)
    {
        var rule = new JsonObject
        {
            ["if"] = new JsonObject
            {
                ["properties"] = new JsonObject { [key] = new JsonObject { ["enum"] = Array(values) } },
                ["required"] = Array([key]),
            },
            ["then"] = new JsonObject { ["required"] = Array([needed]) },
        };
        if (onlyThen)
            rule["else"] = new JsonObject { ["properties"] = new JsonObject { [needed] = false } };
        return rule;
    }

    public static JsonArray Array(IEnumerable<string> words) => new([.. words.Select(word => JsonValue.Create(word))]);
}
