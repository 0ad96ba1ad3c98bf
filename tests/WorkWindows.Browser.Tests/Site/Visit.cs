using Microsoft.Playwright;

namespace WorkWindows.Browser.Tests.Site;

/// <summary>What the pages are looked at on.</summary>
public sealed record Screen(string Name, int WidthPx, int HeightPx, bool IsDark = false)
{
    public static Screen Desktop { get; } = new("desktop", 1280, 900);

    public static Screen Phone { get; } = new("phone", 390, 844);

    public static Screen Dark { get; } = new("dark", 1280, 900, IsDark: true);

    public static Screen DarkPhone { get; } = new("dark-phone", 390, 844, IsDark: true);

    public static Screen Named(string name) =>
        new[] { Desktop, Phone, Dark, DarkPhone }.Single(screen => screen.Name == name);
}

/// <summary>One browser window with cookies of its own.</summary>
public sealed class Visit(IPage page) : IAsyncDisposable
{
    /// <summary>Of pictures: text stays sharp, and docs/ stays small.</summary>
    private const int Quality = 75;

    /// <summary>Where pictures of the pages are written to; unset, none are made.</summary>
    private const string PicturesVariable = "WORKWINDOWS_SCREENSHOTS";

    public IPage Page => page;

    public async Task SignInAsync(string email, string password = Scenario.Password)
    {
        await page.GotoAsync("/");
        await page.GetByLabel("Mail address").FillAsync(email);
        await page.GetByLabel("Password").FillAsync(password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
    }

    public async Task TakePictureAsync(string name)
    {
        if (Environment.GetEnvironmentVariable(PicturesVariable) is { Length: > 0 } folder)
        {
            await page.ScreenshotAsync(new()
            {
                Path = Path.Combine(folder, $"{name}.jpg"),
                Type = ScreenshotType.Jpeg,
                Quality = Quality,
                FullPage = true,
            });
        }
    }

    /// <returns>The page as a PDF on letter paper.</returns>
    public async Task<byte[]> PrintAsync(string name)
    {
        var folder = Environment.GetEnvironmentVariable(PicturesVariable);
        return await page.PdfAsync(new()
        {
            Format = "Letter",
            Margin = new() { Top = "1.5cm", Bottom = "1.5cm", Left = "1.5cm", Right = "1.5cm" },
            Path = folder is { Length: > 0 } ? System.IO.Path.Combine(folder, $"{name}.pdf") : null,
        });
    }

    public async ValueTask DisposeAsync() => await page.Context.DisposeAsync();
}
