using System.Diagnostics;

namespace WorkWindows.Service.Tests.Commands;

/// <summary>The service's executable as a person runs it.</summary>
internal static class Executable
{
    public static async Task<(int Exit, string Output, string Error)> RunAsync(
        string[] arguments, params (string Name, string Value)[] environment)
    {
        var program = Path.Combine(AppContext.BaseDirectory, "workwindows.dll");
        var start = new ProcessStartInfo("dotnet", [program, .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in environment)
            start.Environment[name] = value;
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, await output, await error);
    }
}
