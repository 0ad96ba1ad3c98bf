using System.CommandLine;
using NodaTime;
using WorkWindows.Engine.Rules.Reading;

namespace WorkWindows.Service.Commands;

/// <summary>What the author of a rule pack needs: no server, no database.</summary>
internal static class RulesCommand
{
    public static Command Create(IClock clock) => new("rules", "Check, list and compare rule packs.")
    {
        CheckRulesCommand.Create(clock), ListRulesCommand.Create(clock), DiffRulesCommand.Create(), Schema(),
    };

    private static Command Schema()
    {
        var command = new Command("schema", "Print the JSON Schema of rule packs, for editors.");
        command.SetAction(_ => Console.Out.Write(RulePackSchema.Text()));
        return command;
    }
}
