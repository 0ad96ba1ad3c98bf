namespace WorkWindows.Service.Tests.Rules;

/// <summary>An organization's own rules for tying down, which no shipped rule closes in mild weather.</summary>
internal static class HousePack
{
    public const string Id = "house";
    public const string Address = "/api/rule-packs/house";

    /// <summary>Closed from 5 to 20 March, limited in early April; law on 1 May, life safety on 3 May.</summary>
    public static string Text(string version = "1", string level = "organization", string id = Id) =>
        $"pack: {id}\nversion: \"{version}\"\ntitle: House rules\nlevel: {level}\nrules:\n"
        + Rule($"{id}.quiet", "closes", "calendar: { from: 03-05, to: 03-20 }")
        + Rule($"{id}.care", "limits", "calendar: { from: 04-01, to: 04-10 }", measure: "Go slowly.")
        + Rule($"{id}.law", "closes", "calendar: { on: 05-01 }", authority: "regulation")
        + Rule($"{id}.limb", "closes", "calendar: { on: 05-03 }", more: "life-safety: true")
        + Rule($"{id}.vest", "requires", "calendar: { from: 01-01, to: 12-31 }", measure: "Wear orange.");

    public static string Rule(
        string id, string effect, string when, string? measure = null, string authority = "common-practice",
        string? more = null) =>
        $"  - id: {id}\n    title: Rule {id}\n    effect: {effect}\n    scope: {{ practices: [tie-down] }}\n"
        + $"    when: {{ {when} }}\n    because: It is so.\n    authority: {authority}\n"
        + "    source: { title: House rules, year: 2025 }\n"
        + (measure is null ? "" : $"    measure: {measure}\n") + (more is null ? "" : $"    {more}\n");
}
