using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Commands;

/// <summary>A day of a task in plain words.</summary>
/// <param name="Task">The task's key.</param>
/// <param name="Parcel">The parcel's key.</param>
/// <param name="Day">The day.</param>
/// <param name="State">Its state.</param>
/// <param name="Deciding">The rules that make the state.</param>
/// <param name="AlsoSpoke">The other rules that hold, or may hold.</param>
/// <param name="Quiet">The rules that were checked and do not hold.</param>
/// <param name="Changes">The single changes of input that would change the state.</param>
/// <param name="Cautions">What stands beside every answer.</param>
internal sealed record ExplainedDay(
    string Task, string Parcel, LocalDate Day, DayState State, IReadOnlyList<ExplainedRule> Deciding,
    IReadOnlyList<ExplainedRule> AlsoSpoke, IReadOnlyList<ExplainedRule> Quiet, IReadOnlyList<SingleChange> Changes,
    IReadOnlyList<string> Cautions)
{
    public static ExplainedDay Of(string task, string parcel, TaskEvaluation evaluation, LocalDate day)
    {
        var explanation = Explanation.Of(evaluation, day);
        var deciding = explanation.Deciding.ToArray();
        return new(
            task, parcel, day, explanation.State,
            [.. deciding.Select(verdict => ExplainedRule.Of(verdict, day))],
            [.. explanation.Verdicts.Where(verdict => verdict.Spoke && !deciding.Contains(verdict))
                .Select(verdict => ExplainedRule.Of(verdict, day))],
            [.. explanation.Verdicts.Where(verdict => !verdict.Spoke && !deciding.Contains(verdict))
                .Select(verdict => ExplainedRule.Of(verdict, day))],
            SingleChanges.Of(evaluation, day),
            [SeasonOutput.NoAlerts, .. Engine.Safety.Cautions.Usual]);
    }

    public void Write(TextWriter output)
    {
        output.WriteLine($"{Task} on {Parcel}, {DayWords.WithYear(Day)}: {Wording.Of(State)}");
        WriteRules(output, "Decided by", Deciding);
        WriteRules(output, "Also holds", AlsoSpoke);
        if (Changes.Count > 0)
            output.WriteLine("\nBy itself, any one of these would change the day:");
        foreach (var (what, now, wouldBe, state) in Changes)
            output.WriteLine($"  {what} is {now}; {wouldBe} makes the day {Wording.Of(state)}");
        if (Quiet.Count > 0)
            output.WriteLine("\nChecked, and does not hold:");
        foreach (var rule in Quiet)
        {
            output.WriteLine($"  {rule.Title} ({rule.Rule}): "
                + string.Join("; ", rule.Findings.Select(ExplainedRule.InALine)));
        }
        output.WriteLine();
        foreach (var caution in Cautions)
            output.WriteLine(caution);
    }

    private static void WriteRules(TextWriter output, string heading, IReadOnlyList<ExplainedRule> rules)
    {
        if (rules.Count > 0)
            output.WriteLine($"\n{heading}:");
        foreach (var rule in rules)
            rule.Write(output);
    }
}
