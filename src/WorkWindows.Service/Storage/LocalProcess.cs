using System.Diagnostics;

namespace WorkWindows.Service.Storage;

/// <summary>Runs one of the machine's programs to its end.</summary>
internal static class LocalProcess
{
    /// <param name="program">Its path.</param>
    /// <param name="arguments">Its arguments, unquoted.</param>
    /// <param name="account">The account to run as, which only root may name; null for one's own.</param>
    /// <returns>What it wrote to its standard output.</returns>
    /// <exception cref="LocalProcessException">It ended with another code than 0.</exception>
    public static string Run(string program, IEnumerable<string> arguments, string? account)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            // The account may not be allowed into the folder that the service was started from.
            WorkingDirectory = "/",
        };
        if (account is not null)
            start.UserName = account;
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new LocalProcessException($"{program} ended with code {process.ExitCode}: {output}{errors.Result}");
        return output;
    }
}

/// <summary>A program of the machine ended with another code than 0.</summary>
public sealed class LocalProcessException(string message) : Exception(message);
