using System.CommandLine;
using NodaTime;

namespace WorkWindows.Service.Commands;

/// <summary>What the author of a rule pack needs: no server, no database.</summary>
internal static class RulesCommand
{
    public static Command Create(IClock clock) => new("rules", "Check, list and compare rule packs.")
    {
        CheckRulesCommand.Create(clock),
    };
}
