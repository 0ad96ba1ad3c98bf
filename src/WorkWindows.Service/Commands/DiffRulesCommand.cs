using System.Collections.Immutable;
using System.CommandLine;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Commands;

/// <summary>Says which days of which tasks another version of a pack would have changed in past years.</summary>
internal static class DiffRulesCommand
{
    private const string Shipped = "shipped";
    private const int UsualYears = 10;
    private const int MostYears = 100;

    public static Command Create()
    {
        var old = new Argument<FileInfo>("OLD")
        {
            Description = $"A rule pack, or the word '{Shipped}' for the shipped packs as they are.",
        };
        var recent = new Argument<FileInfo>("NEW") { Description = "The rule pack that is to take its place." };
        var input = new EvaluationOptions();
        var packs = PackFiles.Option();
        var to = DateOption.Optional("--to", "Last day to compare; the last one with weather if not given.");
        var years = new Option<int>("--years")
        {
            DefaultValueFactory = _ => UsualYears,
            Description = $"How many years up to that day; {UsualYears} if not given.",
        };
        var output = Printing.Output();
        var command = new Command("diff", "Say which days of which tasks a new version of a rule pack changes.")
        {
            old, recent,
        };
        input.AddTo(command);
        foreach (var option in new Option[] { to, years, packs, output })
            command.Add(option);
        command.SetAction(result => Run(
            result.GetRequiredValue(old), result.GetRequiredValue(recent), result.GetValue(packs) ?? [],
            () => input.Read(result), result.GetValue(to), result.GetRequiredValue(years),
            result.GetRequiredValue(output) == "json"));
        return command;
    }

    private static int Run(
        FileInfo old, FileInfo recent, FileInfo[] others, Func<EvaluationInput?> read, LocalDate? to, int years,
        bool asJson)
    {
        if (years is < 1 or > MostYears)
            return CommandLine.Refuse($"--years '{years}': 1 to {MostYears}");
        if (PackFiles.Add(ShippedPacks.Read(), others, Console.Error) is not { } stack)
            return CommandLine.BadInput;
        var before = old.ToString() == Shipped ? stack : PackFiles.Add(stack, [old], Console.Error);
        var after = PackFiles.Add(stack, [recent], Console.Error);
        if (read() is not { } input || before is not { } oldStack || after is not { } newStack)
            return CommandLine.BadInput;
        if ((to ?? LastDay(input.Weather)) is not { } last)
            return CommandLine.Refuse("--to: a day, because the weather file holds no day");
        var days = DaySpan.Between(last.PlusYears(-years).PlusDays(1), last);
        input.Warn(Console.Error, days);
        var changes = Compare(input, oldStack, newStack, days);
        if (asJson)
            Printing.AsJson(Console.Out, PackDiffOutput.Plain(changes, days));
        else
            PackDiffOutput.Write(Console.Out, changes, days);
        return 0;
    }

    private static List<TaskDiff> Compare(
        EvaluationInput input, ImmutableArray<RulePack> before, ImmutableArray<RulePack> after, DaySpan days)
    {
        var progress = new SlowProgress(Console.Error, TimeProvider.System);
        var changes = new List<TaskDiff>(input.Tasks.Length);
        foreach (var (task, parcel, evaluations) in
            input.Evaluations(LeadIn.Before(days, before.AddRange(after)), before, after))
        {
            changes.Add(TaskDiff.Of(task.Key, parcel.Parcel, evaluations[0], evaluations[1], days));
            progress.Report(changes.Count, input.Tasks.Length, "tasks");
        }
        return changes;
    }

    /// <summary>The last day with a temperature, or else with anything: a wind station may report for longer.</summary>
    private static LocalDate? LastDay(DailySeries weather) => weather[DailyElement.MinTemperatureC]?.Last
        ?? Enum.GetValues<DailyElement>().Select(element => weather[element]?.Last).Max();
}

/// <summary>What changes for one task.</summary>
/// <param name="Task">The task's key.</param>
/// <param name="Parcel">The parcel's key.</param>
/// <param name="Changes">The runs of changed days, ascending.</param>
/// <param name="Years">Each calendar year of the comparison, ascending.</param>
internal sealed record TaskDiff(
    string Task, string Parcel, IReadOnlyList<ChangedRun> Changes, IReadOnlyList<YearDiff> Years)
{
    public static TaskDiff Of(
        string task, string parcel, TaskEvaluation before, TaskEvaluation after, DaySpan days) => new(
        task, parcel, [.. ChangedRuns.Between(before, after, days)],
        [
            .. Enumerable.Range(0, days.Count).Select(day => days[day]).GroupBy(day => day.Year)
                .Select(year => new YearDiff(
                    year.Key,
                    year.Count(day => before[day] != after[day]),
                    year.Count(day => IsWorkable(before[day])),
                    year.Count(day => IsWorkable(after[day])))),
        ]);

    private static bool IsWorkable(DayState state) => state is DayState.Open or DayState.Limited;
}

/// <summary>A calendar year of a comparison, or the part of it that was compared.</summary>
internal sealed record YearDiff(int Year, int ChangedDays, int WorkableDaysBefore, int WorkableDaysAfter);
