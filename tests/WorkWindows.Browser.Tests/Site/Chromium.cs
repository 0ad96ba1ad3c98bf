using Microsoft.Playwright;

namespace WorkWindows.Browser.Tests.Site;

/// <summary>The machine's own Chromium; nothing is downloaded.</summary>
internal static class Chromium
{
    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome"];

    private static readonly string[] Options =
    [
        "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
        "--disable-background-networking", "--disable-component-update", "--disable-sync",
    ];

    /// <exception cref="InvalidOperationException">There is no Chromium on the path.</exception>
    public static Task<IBrowser> StartAsync(IPlaywright playwright) =>
        playwright.Chromium.LaunchAsync(new() { ExecutablePath = Find(), Args = Options });

    private static string Find() =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .SelectMany(folder => Names.Select(name => Path.Combine(folder, name))).FirstOrDefault(File.Exists)
        ?? throw new InvalidOperationException("No Chromium on the path: install the package chromium.");
}
