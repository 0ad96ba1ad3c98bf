using System.CommandLine;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Connections;
using NodaTime;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Commands;

/// <summary>The commands of the executable. Without one it serves.</summary>
public static partial class CommandLine
{
    /// <summary>The exit code for input, or a machine, that cannot be worked with.</summary>
    public const int BadInput = 2;

    public static async Task<int> RunAsync(string[] args, IClock clock, Func<string[], WebApplication> compose)
    {
        var serve = new Command("serve", "Serve pages and API, and run the jobs (the default).");
        var root = new RootCommand("Decides on which days woodland work may be done, and says why.")
        {
            serve, EvaluateCommand.Create(), ExplainCommand.Create(), BacktestCommand.Create(),
            RulesCommand.Create(clock),
            CreateOrganizationCommand.Create(compose),
        };
        foreach (var command in new[] { root, serve })
        {
            // Settings of the host, such as --urls=http://127.0.0.1:8080, are its own to read.
            command.TreatUnmatchedTokensAsErrors = false;
            command.SetAction((result, cancellation) => ServeAsync([.. result.UnmatchedTokens], compose, cancellation));
        }

        var parsed = root.Parse(args);
        if (parsed.Errors.Count > 0)
            return Refuse(string.Join(' ', parsed.Errors.Select(error => OneLine().Replace(error.Message, " "))));
        // The host handles Ctrl-C itself and may take longer to stop than a command is given by default.
        return await parsed.InvokeAsync(new InvocationConfiguration { ProcessTerminationTimeout = null });
    }

    private static async Task<int> ServeAsync(
        string[] arguments, Func<string[], WebApplication> compose, CancellationToken cancellation)
    {
        if (Array.Find(arguments, argument => !argument.StartsWith("--", StringComparison.Ordinal)) is { } unknown)
            return Refuse($"Unknown command '{unknown}'. Try --help.");
        try
        {
            await using var app = compose(arguments);
            await app.StartAsync(cancellation);
            await app.WaitForShutdownAsync(cancellation);
            return 0;
        }
        catch (SetupException fault)
        {
            return Refuse(fault.Message);
        }
        catch (IOException fault) when (fault.InnerException is AddressInUseException)
        {
            return Refuse($"{fault.Message} Set ASPNETCORE_URLS to another address, such as http://127.0.0.1:5081.");
        }
    }

    [GeneratedRegex(@"\s+")]
    private static partial Regex OneLine();

    internal static int Refuse(string reason)
    {
        Console.Error.WriteLine(reason);
        return BadInput;
    }
}
