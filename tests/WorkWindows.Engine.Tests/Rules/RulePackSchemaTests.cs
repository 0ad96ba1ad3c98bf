using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Rules.Reading;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace WorkWindows.Engine.Tests.Rules;

/// <summary>The schema takes what the reader takes, and refuses most of what it refuses.</summary>
public class RulePackSchemaTests
{
    private const int DeepestLevel = 60;

    private static readonly string Docs = Path.Combine(ProjectFiles.Root, "docs");

    private static readonly string BadPacks =
        Path.Combine(ProjectFiles.Root, "tests", "WorkWindows.Engine.Tests", "Rules", "BadPacks");

    private static readonly JsonSchema Schema = JsonSchema.FromText(RulePackSchema.Text());

    [Fact]
    public void Text_IsWhatTheDocumentationHolds() =>
        Assert.Equal(File.ReadAllText(Path.Combine(Docs, "rule-pack.schema.json")), RulePackSchema.Text());

    [Fact]
    public void Text_IsASchemaOfItsDraft() =>
        Assert.True(MetaSchemas.Draft202012.Evaluate(JsonNode.Parse(RulePackSchema.Text())).IsValid);

    [Fact]
    public void Schema_TakesEveryShippedPack() => Assert.All(ShippedPacks.Texts(), AssertTaken);

    [Fact]
    public void Schema_TakesTheGuidesExamples() =>
        Assert.All(
            File.ReadAllText(Path.Combine(Docs, "rule-packs.md")).Split("```yaml\n")[1..]
                .Select(part => part.Split("```")[0]).Where(text => text.Contains("pack:", StringComparison.Ordinal)),
            AssertTaken);

    [Fact]
    public void Schema_TakesEveryKindOfConditionAndDate() =>
        AssertTaken(File.ReadAllText(Path.Combine(BadPacks, "above", "every-kind.yaml")));

    [Fact]
    public void Schema_RefusesMostOfTheBadPacks()
    {
        var wellFormed = Directory.EnumerateFiles(BadPacks, "*.yaml").Select(File.ReadAllText)
            .Select(Parsed).OfType<JsonNode>().ToArray();

        var refused = wellFormed.Count(pack => !Schema.Evaluate(pack).IsValid);

        // What it cannot see depends on other keys, on other packs, or on numbers beyond any weather.
        Assert.InRange((double)refused / wellFormed.Length, 0.8, 1);
    }

    [Theory]
    [InlineData("key", "")]
    [InlineData("rules[0] key", "rule")]
    [InlineData("rules[0].scope key", "scope")]
    public void Schema_HasTheKeysOfTheReader(string refused, string definition)
    {
        var text = refused switch
        {
            "key" => "x: 1",
            "rules[0] key" => "rules: [{ x: 1 }]",
            _ => "rules: [{ scope: { x: 1 } }]",
        };
        var accepted = Assert.Throws<PackException>(() => RulePackReader.Read(text)).Faults
            .Single(fault => fault.Key == refused).Accepted.Split(", ");
        var schema = JsonNode.Parse(RulePackSchema.Text())!;
        var mapping = definition.Length == 0 ? schema : schema["$defs"]![definition]!;

        Assert.Equal(accepted, mapping["properties"]!.AsObject().Select(property => property.Key));
    }

    private static void AssertTaken(string text)
    {
        RulePackReader.Read(text);
        var result = Schema.Evaluate(Parsed(text), new EvaluationOptions { OutputFormat = OutputFormat.List });

        Assert.True(result.IsValid, string.Join('\n', result.Details.Where(detail => detail.HasErrors)
            .Select(detail => $"{detail.InstanceLocation}: {string.Join("; ", detail.Errors!.Values)}")));
    }

    /// <summary>The file as an editor sees it; null where it is not YAML, or has a node that contains itself.</summary>
    private static JsonNode? Parsed(string text)
    {
        try
        {
            var stream = new YamlStream();
            stream.Load(new StringReader(text));
            return stream.Documents is [var document] ? Json(document.RootNode) : null;
        }
        catch (Exception e) when (e is YamlException or InvalidOperationException)
        {
            return null;
        }
    }

    private static JsonNode? Json(YamlNode node, int level = 0) => node switch
    {
        _ when level > DeepestLevel => throw new InvalidOperationException("A node contains itself."),
        YamlMappingNode mapping => new JsonObject(mapping.Children.Select(
            entry => KeyValuePair.Create(((YamlScalarNode)entry.Key).Value!, Json(entry.Value, level + 1)))),
        YamlSequenceNode sequence => new JsonArray([.. sequence.Children.Select(child => Json(child, level + 1))]),
        YamlScalarNode { Style: not ScalarStyle.Plain } quoted => quoted.Value,
        YamlScalarNode { Value: "true" or "false" } truth => truth.Value == "true",
        YamlScalarNode { Value: "" } => null,
        YamlScalarNode number when double.TryParse(
            number.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) => value,
        YamlScalarNode text => text.Value,
        _ => throw new InvalidOperationException(node.NodeType.ToString()),
    };
}
