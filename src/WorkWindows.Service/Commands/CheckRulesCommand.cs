using System.CommandLine;
using NodaTime;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Service.Commands;

/// <summary>Says what is wrong with rule packs in files.</summary>
internal static class CheckRulesCommand
{
    public static Command Create(IClock clock)
    {
        var files = new Argument<FileInfo[]>("FILE")
        {
            Arity = ArgumentArity.OneOrMore,
            Description = "Rule packs, higher ones first: each is read below the shipped ones and the files before it.",
        };
        var on = DateOption.Optional(
            "--on", "Warn of rules whose valid years are over on this day; today if not given.");
        var command = new Command("check", "Say what is wrong with rule packs, and which rules are out of date.")
        {
            files, on,
        };
        command.SetAction(result => Run(
            result.GetRequiredValue(files), result.GetValue(on) ?? clock.GetCurrentInstant().InUtc().Date));
        return command;
    }

    private static int Run(FileInfo[] files, LocalDate on)
    {
        var stack = ShippedPacks.Read();
        var exit = 0;
        foreach (var file in files)
        {
            if (!PackFiles.TryRead(file, stack, Console.Error, out var pack))
            {
                exit = CommandLine.BadInput;
                continue;
            }
            var replaces = stack.Any(other => other.Id == pack.Id) ? ", in place of the pack of the same key" : "";
            Console.WriteLine($"{file}: {pack.Id} {pack.Version}, {pack.Level.ToString().ToLowerInvariant()}, "
                + $"{pack.Rules.Length} {(pack.Rules.Length == 1 ? "rule" : "rules")}{replaces}");
            foreach (var rule in pack.Rules.Where(rule => rule.Valid.AreOverIn(on.Year)))
            {
                Console.Error.WriteLine($"WARNING: {file}: {rule.Id} is out of date: its valid years ended in "
                    + $"{rule.Valid.To}. Look the source up again, then change valid.to.");
            }
            stack = stack.With(pack);
        }
        return exit;
    }
}
