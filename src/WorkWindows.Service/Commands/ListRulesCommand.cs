using System.CommandLine;
using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Service.Commands;

/// <summary>Lists the rules of the shipped packs and of files.</summary>
internal static class ListRulesCommand
{
    public static Command Create(IClock clock)
    {
        var files = new Argument<FileInfo[]>("FILE")
        {
            Arity = ArgumentArity.ZeroOrMore,
            Description = "Rule packs to list with the shipped ones, higher ones first.",
        };
        var state = new Option<string?>("--state") { Description = "Only rules that speak of this state, such as MI." };
        state.AcceptOnlyFromAmong([.. UsStates.FipsByPostalCode.Keys.Order(StringComparer.Ordinal)]);
        var practice = new Option<string?>("--practice")
        {
            Description = "Only rules that may speak of this kind of work, such as hinge-cut.",
        };
        practice.AcceptOnlyFromAmong([.. PracticeCatalogue.All.Select(known => known.Id)]);
        var output = Printing.Output();
        var command = new Command("list", "List the rules: what they do, who says so, and for which years.")
        {
            files, state, practice, output,
        };
        command.SetAction(result =>
        {
            if (PackFiles.Add(ShippedPacks.Read(), result.GetValue(files) ?? [], Console.Error) is not { } packs)
                return CommandLine.BadInput;
            var year = clock.GetCurrentInstant().InUtc().Year;
            ListedRule[] rules =
            [
                .. packs.SelectMany(pack => pack.Rules
                    .Where(rule => Speaks(rule.Scope, result.GetValue(state), result.GetValue(practice)))
                    .Select(rule => ListedRule.Of(pack, rule, year))),
            ];
            if (result.GetRequiredValue(output) == "json")
                Printing.AsJson(Console.Out, rules);
            else
                WriteTable(rules);
            return 0;
        });
        return command;
    }

    private static bool Speaks(Scope scope, string? state, string? practice)
    {
        var work = practice is null ? null : PracticeCatalogue.Find(practice);
        return (state is null || scope.States.IsEmpty || scope.States.Contains(state))
            && (work is null || scope.Practices.IsEmpty || scope.Practices.Contains(work.Id))
            && (work is null || scope.Traits == PracticeTraits.None || (scope.Traits & work.Traits) != 0);
    }

    private static void WriteTable(ListedRule[] rules)
    {
        var table = Printing.Table("pack", "rule", "effect", "title", "authority", "valid", "source");
        foreach (var rule in rules)
            table.Add(rule.Pack, rule.Rule, rule.Effect, rule.Title, rule.Authority, rule.Valid, rule.Source);
        Printing.Write(Console.Out, table);
        var over = rules.Count(rule => rule.OutOfDate);
        Console.WriteLine($"{rules.Length} rules, {over} out of date.");
    }

    /// <summary>A rule in a line.</summary>
    private sealed record ListedRule(
        string Pack, string Version, string Rule, string Effect, string Title, string Authority, bool LifeSafety,
        string Valid, bool OutOfDate, string Source, string? Address)
    {
        public static ListedRule Of(RulePack pack, Rule rule, int year)
        {
            var over = rule.Valid.AreOverIn(year);
            return new(pack.Id, pack.Version, rule.Id, Wording.Of(rule.Effect), rule.Title, Wording.Of(rule.Authority),
                rule.LifeSafety, Years(rule.Valid) + (over ? ", OUT OF DATE" : ""), over, Wording.Of(rule.Source),
                rule.Source.Address);
        }

        private static string Years(ValidYears valid) => valid switch
        {
            { From: null, To: null } => "",
            { From: { } from, To: null } => $"from {from}",
            { From: null, To: { } to } => $"to {to}",
            _ => $"{valid.From} to {valid.To}",
        };
    }
}
