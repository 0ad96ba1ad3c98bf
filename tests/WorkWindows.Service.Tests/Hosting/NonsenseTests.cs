using System.Net;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Shouldly;
using WorkWindows.Service.Tests.Safety.Checklists;

namespace WorkWindows.Service.Tests.Hosting;

/// <summary>Whatever is handed in to the API, it is taken or refused, and nothing breaks.</summary>
public sealed partial class NonsenseTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private static readonly string[] Values =
    [
        "null", "\"\"", "-1", "0", "1e30", "\"abc\"", "\"\\u0000\"", "\"9999-12-31\"", "\"0001-01-01\"", "\"-9998-01-01\"",
        "\"2026-02-30\"", "[]", "{}", "[null]", "[\"a\"]", "true", "1.5", "2147483648",
        "\"00000000-0000-0000-0000-000000000000\"", $"\"{new string('x', 6000)}\"",
    ];

    /// <summary>What a night sends is not asked for by a form.</summary>
    private static readonly string[] LeftOut = ["/api/notices/nightly"];

    [Fact]
    public async Task Api_TakesOrRefuses_EveryValueInEveryField()
    {
        var given = await GivenChecklist.OpenAsync(service);
        var client = given.Office.Consultant;
        var document = JsonNode.Parse(await client.GetStringAsync("/openapi/v1.json"))!;
        var ids = await IdsAsync(given);
        var broken = new List<string>();

        foreach (var (path, operations) in document["paths"]!.AsObject().Where(one => !LeftOut.Contains(one.Key)))
        {
            var address = InBraces().Replace(path, name => name.Value is "{date}" or "{day}" ? "2026-12-01"
                : ids.GetValueOrDefault(path.Split('/')[2], given.Task).ToString());
            foreach (var (method, operation) in operations!.AsObject().Where(one => one.Key != "delete"))
            {
                foreach (var (query, body) in Requests(document, operation!))
                {
                    using var request = new HttpRequestMessage(HttpMethod.Parse(method), address + query);
                    request.Content = body is null ? null : new StringContent(body, Encoding.UTF8, "application/json");
                    using var answer = await client.SendAsync(request);
                    if (answer.StatusCode >= HttpStatusCode.InternalServerError)
                        broken.Add($"{method} {path}{query} {body?[..Math.Min(body.Length, 200)]}");
                }
            }
        }

        broken.ShouldBeEmpty();
    }

    /// <summary>An operation's requests with nonsense in one place and what its schema asks for in all others.</summary>
    private static IEnumerable<(string Query, string? Body)> Requests(JsonNode document, JsonNode operation)
    {
        var queries = (operation["parameters"] as JsonArray ?? [])
            .Where(parameter => (string?)parameter!["in"] == "query").Select(parameter => (string)parameter!["name"]!);
        foreach (var (name, value) in queries.SelectMany(name => Values.Select(value => (name, value))))
        {
            var text = JsonNode.Parse(value)?.ToString() ?? "";
            yield return ($"?{name}={Uri.EscapeDataString(text[..Math.Min(text.Length, 1000)])}", null);
        }
        if (operation["requestBody"]?["content"]?["application/json"]?["schema"] is not { } schema)
            yield break;
        foreach (var value in Values)
            yield return ("", value);
        if (Usual(document, schema) is not JsonObject usual)
            yield break;
        foreach (var (field, value) in usual.SelectMany(field => Values.Select(value => (field.Key, value))))
        {
            var body = usual.DeepClone();
            body[field] = JsonNode.Parse(value);
            yield return ("", body.ToJsonString());
        }
    }

    /// <summary>A value that the schema accepts.</summary>
    private static JsonNode? Usual(JsonNode document, JsonNode schema)
    {
        while (schema["$ref"] is { } reference)
            schema = document["components"]!["schemas"]![((string)reference!).Split('/')[^1]]!;
        if (schema["oneOf"] is JsonArray choices)
            return Usual(document, choices.Last()!);
        if (schema["enum"] is JsonArray names)
            return names[0]!.DeepClone();
        var type = schema["type"] is JsonArray types
            ? types.Select(one => (string)one!).First(one => one != "null") : (string?)schema["type"];
        return type switch
        {
            "string" when (string?)schema["format"] == "date" => "2026-12-01",
            "string" => "text",
            "integer" or "number" => 2,
            "boolean" => true,
            "array" => new JsonArray(),
            _ => new JsonObject((schema["properties"] as JsonObject ?? []).Select(
                property => KeyValuePair.Create(property.Key, Usual(document, property.Value!)))),
        };
    }

    /// <summary>What stands for the id in an address, by the kind that it begins with; else it is the task.</summary>
    private static async Task<Dictionary<string, Guid>> IdsAsync(GivenChecklist given)
    {
        var client = given.Office.Consultant;
        return new()
        {
            ["parcels"] = given.Office.Parcel,
            ["people"] = given.LeadId,
            ["properties"] = (await client.ReadAsync("/api/properties"))[0].Id(),
            ["crews"] = (await client.CreateAsync("/api/crews", new { name = "North", leadId = given.LeadId })).Id(),
        };
    }

    [GeneratedRegex(@"\{[^}]+\}")]
    private static partial Regex InBraces();
}
