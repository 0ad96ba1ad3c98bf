using System.Collections.Concurrent;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using NodaTime.Testing;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tests.Storage;

namespace WorkWindows.Browser.Tests.Site;

[CollectionDefinition(Name)]
public sealed class SiteCollection : ICollectionFixture<SiteFixture>
{
    public const string Name = "site";
}

/// <summary>
/// The whole service on a loopback port with the tests' own scenario and the demo, and a browser in front of it.
/// </summary>
public sealed class SiteFixture(DatabaseFixture server) : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("ww-pages-").FullName;
    private readonly TestDatabase _database = new(server);
    private readonly ConcurrentDictionary<string, string> _signedIn = new();
    private WebApplicationFactory<Program>? _factory;
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public Scenario Scenario { get; private set; } = null!;

    /// <summary>A task on which exceptions are made; those of the scenario stay as they are.</summary>
    public Guid Excepted { get; private set; }

    public WatchScenario Watched { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        await _database.InitializeAsync();
        _factory = new WebApplicationFactory<Program>().WithWebHostBuilder(host => host
            .UseSetting(WebHostDefaults.ServerUrlsKey, "http://127.0.0.1:0")
            .UseSetting(DatabaseServer.Variable, _database.Address.Owner)
            .UseSetting(DataFolder.Variable, _folder)
            .UseSetting(ServiceRoles.Variable, "web")
            .UseSetting("WORKWINDOWS_LOG_LEVEL", "Warning")
            .ConfigureTestServices(services => services.AddSingleton<NodaTime.IClock>(new FakeClock(Scenario.Now))));
        _factory.UseKestrel();
        _factory.StartServer();
        Scenario = await Scenario.SeedAsync(_database, _factory.Services);
        Excepted = await ExceptionScenario.SeedAsync(_database, _factory.Services);
        Watched = await WatchScenario.SeedAsync(_database, _factory.Services);
        await ReviewScenario.SeedAsync(_database, _factory.Services);
        await MessageScenario.SeedAsync(_database, _factory.Services);
        await LookAtDemoAsync(_factory.Services);
        _playwright = await Playwright.CreateAsync();
        _browser = await Chromium.StartAsync(_playwright);
    }

    /// <summary>As the service's worker does within a minute.</summary>
    private static async Task LookAtDemoAsync(IServiceProvider services)
    {
        await using var scope = services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<WorkWindowsDb>();
        foreach (var (id, _) in await ScheduledOrganization.AllAsync(db, CancellationToken.None))
        {
            await using var own = services.CreateAsyncScope();
            own.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(id);
            if (await own.ServiceProvider.GetRequiredService<WorkWindowsDb>().DueLooks.AnyAsync())
                await own.ServiceProvider.GetRequiredService<NightlyRun>().LookAsync(id, CancellationToken.None);
        }
    }

    /// <summary>The routes of all pages.</summary>
    public IEnumerable<string> Routes => _factory!.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
        .Where(endpoint => endpoint.Metadata.GetMetadata<PageActionDescriptor>() is not null)
        .Select(endpoint => endpoint.RoutePattern.RawText!.TrimStart('/')).Distinct().Order(StringComparer.Ordinal);

    /// <summary>A browser window that nobody has signed in with.</summary>
    public async Task<Visit> OpenAsync(Screen screen, bool scripts = true, string? state = null)
    {
        var context = await _browser!.NewContextAsync(new()
        {
            BaseURL = _factory!.ClientOptions.BaseAddress.ToString(),
            ViewportSize = new() { Width = screen.WidthPx, Height = screen.HeightPx },
            ColorScheme = screen.IsDark ? ColorScheme.Dark : ColorScheme.Light,
            JavaScriptEnabled = scripts,
            StorageState = state,
            TimezoneId = "America/Detroit",
            Locale = "en-GB",
        });
        return new(await context.NewPageAsync());
    }

    /// <summary>A browser window of someone who has signed in, on a page.</summary>
    public async Task<Visit> OpenAsync(Screen screen, string email, string path = "/week", bool scripts = true)
    {
        if (!_signedIn.TryGetValue(email, out var state))
        {
            await using var first = await OpenAsync(Screen.Desktop);
            await first.SignInAsync(
                email, email == Scenario.DemoConsultant ? Scenario.DemoPassword : Scenario.Password);
            await Assertions.Expect(first.Page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("/(morning|land|week)$"));
            _signedIn[email] = state = await first.Page.Context.StorageStateAsync();
        }
        var visit = await OpenAsync(screen, scripts, state);
        await visit.Page.GotoAsync(path);
        return visit;
    }

    /// <summary>The season of the demo's last hinge cut, whose parcel lies between two stations.</summary>
    public async Task<Visit> OpenDemoAsync(Screen screen)
    {
        var visit = await OpenAsync(screen, Scenario.DemoConsultant);
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Hinge cut", Exact = true }).Last.ClickAsync();
        return visit;
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        _playwright?.Dispose();
        if (_factory is not null)
            await _factory.DisposeAsync();
        await _database.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }
}
