using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using static WorkWindows.Engine.Rules.Reading.Schemas;

namespace WorkWindows.Engine.Rules.Reading;

/// <summary>
/// What a rule pack's file may hold, as a JSON Schema (draft 2020-12) for editors. It is made of the reader's own
/// words. The reader refuses more: what depends on other keys, on other packs, or on numbers beyond any weather.
/// </summary>
public static class RulePackSchema
{
    private const string MachineKey = "^[a-z0-9]+([.-][a-z0-9]+)*$";

    private static readonly JsonSerializerOptions Layout = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The schema, indented, with a line end at its end.</summary>
    public static string Text() => Pack().ToJsonString(Layout) + "\n";

    private static JsonObject Pack()
    {
        var pack = Mapping("A rule pack: the rules of one jurisdiction", ["pack", "version", "title", "rules"],
            ("pack", Matching(MachineKey, "Its key: lower case, hyphens")),
            ("version", Sentence("Its version, in quotes; raise it with every change")),
            ("title", Sentence("Its name for people")),
            ("level", OneOf(Words.Levels.Keys, "Where it stands in the stack of packs")),
            ("states", List(Ref("state"), "The states of every rule that names none")),
            ("rules", List(Ref("rule"), "Its rules")));
        pack["allOf"] = new JsonArray(
            Requires("level", [Words.Kebab(nameof(PackLevel.State))], "states", onlyThen: false));
        pack["$defs"] = new JsonObject(
            new Dictionary<string, JsonNode?>
            {
                ["rule"] = RuleOf(),
                ["scope"] = ScopeOf(),
                ["state"] = OneOf(
                    UsStates.FipsByPostalCode.Keys.Order(StringComparer.Ordinal), "Postal code of a state"),
            }.Concat(DateSchema.Definitions()).Concat(ConditionSchema.Definitions()));
        pack.Insert(0, "$schema", "https://json-schema.org/draft/2020-12/schema");
        pack.Insert(1, "title", "WorkWindows rule pack");
        return pack;
    }

    private static JsonObject RuleOf()
    {
        var rule = Mapping("A rule", ["id", "title", "effect", "scope", "when", "because", "authority", "source"],
            ("id", Matching(MachineKey, "Its name for machines, unique everywhere: begin it with the pack's key")),
            ("title", Sentence("What it says, in a few words")),
            ("effect", OneOf(Words.Effects.Keys, "What it does to a day on which its condition holds")),
            ("lifts", Matching(MachineKey, "With the effect lifts: the id of the rule of a higher pack")),
            ("scope", Ref("scope")),
            ("when", Ref("condition", "The days it speaks on")),
            ("because", Sentence("Why, in one plain sentence that the owner may read")),
            ("measure", Sentence("What must be done; needed with limits and requires")),
            ("authority", OneOf(Words.Authorities.Keys, "How binding it is")),
            ("life-safety", new JsonObject
            {
                ["description"] = "It keeps people from being hurt, so that nobody can lift it",
                ["type"] = "boolean",
            }),
            ("source", Mapping("Where it is stated", ["title"],
                ("title", Sentence("The document, or: common practice, no source")),
                ("year", Year("Its year")),
                ("where", Sentence("Paragraph, page, what you read into it")),
                ("address", Matching("^https?://", "Where it can be read")))),
            ("valid", Mapping("The years the source speaks of, both included", [],
                ("from", Year("The first year")), ("to", Year("The last year")))));
        rule["allOf"] = new JsonArray(
            Requires("effect", [Words.Kebab(nameof(Effect.Limits)), Words.Kebab(nameof(Effect.Requires))], "measure",
                onlyThen: false),
            Requires("effect", [Words.Kebab(nameof(Effect.Lifts))], "lifts", onlyThen: true));
        return rule;
    }

    private static JsonObject ScopeOf()
    {
        var scope = Mapping("The work it speaks of: each key must match, one entry of it is enough", [],
            ("practices", List(
                OneOf(PracticeCatalogue.All.Select(practice => practice.Id), "A kind of work"), "Kinds of work")),
            ("traits", List(OneOf(Words.Traits.Keys, "What a kind of work does"), "What the kind of work does")),
            ("states", List(Ref("state"), "States")),
            ("counties", List(Matching("^[0-9]{5}$", "Five-digit FIPS code, in quotes"), "Counties")),
            ("area", List(Corner(), "Corners of an area that the parcel lies in", AreaReading.FewestCorners)),
            ("species", List(OneOf(Words.Species.Keys, "A species group"), "Species groups in the stand")),
            ("flags", List(OneOf(Words.Flags.Keys, "What is noted of a parcel"), "What is noted of the parcel")),
            ("organizations", List(Sentence("Name of an organization"), "Organizations")));
        scope["minProperties"] = 1;
        return scope;
    }

    private static JsonObject Corner() => new()
    {
        ["description"] = "Degrees north, then degrees east: [44.25, -86.30]",
        ["type"] = "array",
        ["prefixItems"] = new JsonArray(
            Number(-AreaReading.MostNorth, AreaReading.MostNorth), Number(-AreaReading.MostEast, AreaReading.MostEast)),
        ["minItems"] = 2,
        ["maxItems"] = 2,
    };

    private static JsonObject Year(string description) =>
        Integer(RuleReading.FirstYear, RuleReading.LastYear, description);
}
