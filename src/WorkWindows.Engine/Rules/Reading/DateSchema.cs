using System.Text.Json.Nodes;
using static WorkWindows.Engine.Rules.Reading.Schemas;

namespace WorkWindows.Engine.Rules.Reading;

/// <summary>The part of the schema that speaks of dates and ranges.</summary>
internal static class DateSchema
{
    public static IEnumerable<KeyValuePair<string, JsonNode?>> Definitions() => new Dictionary<string, JsonNode?>
    {
        ["monthDay"] = Matching(
            "^(0[13578]|1[02])-(0[1-9]|[12][0-9]|3[01])$|^(0[469]|11)-(0[1-9]|[12][0-9]|30)$|^02-(0[1-9]|[12][0-9])$",
            "Month and day, such as 08-01"),
        ["date"] = new JsonObject
        {
            ["description"] = "A day that returns every year",
            ["oneOf"] = new JsonArray(
                [Ref("monthDay"), .. CalendarReading.Kinds.Select(kind => Kind(kind.Key, kind.Value))]),
        },
        ["range"] = new JsonObject
        {
            ["description"] = "Days of the year, both ends included; over New Year if the end comes before the start",
            ["oneOf"] = new JsonArray(
                Mapping("From a day to a day", ["from", "to"],
                    ("from", Ref("date", "The first day")), ("to", Ref("date", "The last day"))),
                Mapping("One day", ["on"], ("on", Ref("date", "The day")))),
        },
    };

    private static JsonObject Kind(string kind, string[] beside) => Mapping(
        $"A day by {kind}",
        [kind, .. beside],
        [
            .. beside.Prepend(kind).Select(key => (key, Value(key))),
            (CalendarReading.PlusDays, Integer(-CalendarReading.MostPlusDays, CalendarReading.MostPlusDays,
                "So many days later, or earlier")),
        ]);

    private static JsonObject Value(string key) => key switch
    {
        "nth" => new JsonObject
        {
            ["description"] = "1 to 5 from the start of the month, -1 to -5 from its end",
            ["enum"] = new JsonArray([.. Enumerable.Range(1, CalendarReading.MostNth)
                .SelectMany(nth => new[] { JsonValue.Create(nth), JsonValue.Create(-nth) })]),
        },
        "weekday" or "nearest" or "first" => OneOf(Words.Weekdays.Keys, "A weekday"),
        "month" => Integer(1, 12, "1 to 12"),
        "event" => OneOf(Words.Events.Keys, "An event of nature"),
        "not-before" => Ref("monthDay", "The earliest day it can fall on"),
        "not-after" => Ref("monthDay", "The latest day it can fall on"),
        _ => Ref("monthDay"),
    };
}
