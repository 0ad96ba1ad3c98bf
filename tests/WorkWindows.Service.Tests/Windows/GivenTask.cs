using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules.Reading;
using WorkWindows.Engine.Signals;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Tests.Windows;

/// <summary>Hinge cutting on the first days of 2026, evaluated with small rules.</summary>
internal static class GivenTask
{
    public static LocalDate First { get; } = new(2026, 1, 1);

    /// <param name="minF">Minimum °F of each day from 1 January on; NaN for a day without.</param>
    /// <param name="rules">Rules of a pack in YAML, without id, title, reason, authority and source.</param>
    public static EvaluatedTask Of(double[] minF, params string[] rules)
    {
        var span = new DaySpan(First, minF.Length);
        var signal = new Signal(SignalKind.MinTemperatureC, span, [.. minF.Select(value => (value - 32) / 1.8)],
            [.. minF.Select(value => double.IsNaN(value) ? Basis.Missing : Basis.Observed)]);
        var pack = RulePackReader.Read("pack: test\nversion: \"1\"\ntitle: Test\nrules:\n" + string.Concat(
            rules.Select((rule, index) =>
                $"  - id: r{index}\n    title: Rule {index}\n    because: It is so.\n    authority: agency-guideline\n"
                + $"    source: {{ title: Handbook, year: 2020, address: \"https://example.org/{index}\" }}\n"
                + $"    scope: {{ practices: [hinge-cut] }}\n    {rule}\n")));
        var practice = PracticeCatalogue.Find("hinge-cut")!;
        var evaluation = new PointRules([pack], SignalSet.Of("test", span, [signal], []))
            .Evaluate(new("T-1", practice, "MI", "26065", null, []));
        var zone = DateTimeZoneProviders.Tzdb["America/Detroit"];
        return new(
            new(Guid.Empty, "T-1", practice, Guid.Empty, "Beech Ridge", Guid.Empty, "Quill Farm", zone, null, null, 2,
                4.5m, "acres", null, null, null),
            evaluation);
    }

    public static string Closes(string when) => $"effect: closes\n    when: {{ {when} }}";

    public static string Limits(string when) =>
        $"effect: limits\n    measure: Take care.\n    when: {{ {when} }}";

    public static string Requires(string when) =>
        $"effect: requires\n    measure: Wear orange.\n    when: {{ {when} }}";
}
