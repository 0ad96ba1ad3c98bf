using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using WorkWindows.Engine.Signals;
using static WorkWindows.Engine.Rules.Reading.Schemas;

namespace WorkWindows.Engine.Rules.Reading;

/// <summary>The part of the schema that speaks of conditions.</summary>
internal static class ConditionSchema
{
    private const string Number = @"[+-]?([0-9]+\.?[0-9]*|\.[0-9]+)";

    public static IEnumerable<KeyValuePair<string, JsonNode?>> Definitions() => new Dictionary<string, JsonNode?>
    {
        ["condition"] = new JsonObject
        {
            ["description"] = "What must be so on a day",
            ["oneOf"] = new JsonArray(
            [
                Mapping("Every part holds", ["all"], ("all", List(Ref("condition"), "The parts"))),
                Mapping("At least one part holds", ["any"], ("any", List(Ref("condition"), "The parts"))),
                Mapping("The part does not hold", ["not"], ("not", Ref("condition"))),
                Mapping("The day lies in a range of the year", ["calendar"], ("calendar", Ref("range"))),
                Mapping("A weather service's alert is in force", ["alert"],
                    ("alert", OneOf(Words.Alerts.Keys, "The alert"))),
                Heat(),
                Mapping("From the first day of a range on which a condition holds until the range ends",
                    ["onset", "within"],
                    ("onset", Ref("condition", "What must hold once")),
                    ("within", Ref("range", "The range; no event may move it"))),
                .. Words.Signals.GroupBy(signal => UnitsOf(RuleUnits.For(signal.Value)), signal => signal.Key)
                    .SelectMany(group => OfSignals([.. group], RuleUnits.For(Words.Signals[group.First()]))),
                TotalOfPrecipitation(),
            ]),
        },
        ["temperature"] = Quantity(RuleUnits.Temperatures),
    };

    private static IEnumerable<JsonObject> OfSignals(string[] signals, IReadOnlyDictionary<string, RuleUnit> units)
    {
        var names = string.Join(", ", signals);
        yield return Compared($"{names} against a limit", ["signal"], units,
            ("signal", OneOf(signals, "The signal")),
            ("days-in-a-row", Days("So many days in a row, from the last of them on")));
        yield return Mapping(
            $"{names}: a state that begins past one limit and lasts until another", ["signal", "starts", "ends"],
            ("signal", OneOf(signals, "The signal")),
            ("starts", Compared("What begins it", [], units)),
            ("ends", Compared("What ends it, in the other direction", [], units)));
    }

    private static JsonObject TotalOfPrecipitation() => Compared(
        "The precipitation of this day and those before it", ["signal", "total-over-days"],
        RuleUnits.For(SignalKind.PrecipitationMm),
        ("signal", OneOf(
            Words.Signals.Where(signal => signal.Value == SignalKind.PrecipitationMm).Select(signal => signal.Key),
            "The signal")),
        ("total-over-days", Days("How many days, this one included")));

    private static JsonObject Heat() => Compared(
        "Heat since a day of the year", ["degree-days"], RuleUnits.DegreeDays,
        ("degree-days", Mapping("How it is counted", ["method", "base", "since"],
            ("method", OneOf(Words.Methods.Keys, "A number is valid only with the method that it was fitted with")),
            ("base", Ref("temperature", "Heat counts above it")),
            ("upper", Ref("temperature", "More heat than this counts no more")),
            ("since", Ref("monthDay", "The first day that counts")))));

    /// <summary>A mapping with exactly one comparison beside its own keys.</summary>
    private static JsonObject Compared(
        string description, string[] required, IReadOnlyDictionary<string, RuleUnit> units,
        params (string Key, JsonNode Value)[] keys) =>
        Mapping(description, required,
            [.. keys, .. Words.Relations.Keys.Select(relation => (relation, (JsonNode)Quantity(units)))])
            .WithOneOf(Words.Relations.Keys);

    private static JsonObject Quantity(IReadOnlyDictionary<string, RuleUnit> units) => Matching(
        $"^{Number} ({string.Join('|', units.Keys.Select(Regex.Escape))})$",
        $"A number, a space and a unit: {UnitsOf(units)}");

    private static string UnitsOf(IReadOnlyDictionary<string, RuleUnit> units) => string.Join(" or ", units.Keys);

    private static JsonObject Days(string description) => Integer(2, ConditionReading.LongestRunDays, description);
}
