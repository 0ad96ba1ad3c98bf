using System.Net.Http.Headers;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Testing;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tests.Storage;

namespace WorkWindows.Service.Tests.Hosting;

/// <summary>The whole service on a database of its own: take it as an IClassFixture.</summary>
public sealed class ServiceFixture(DatabaseFixture server) : IAsyncLifetime
{
    public const string Password = "correct horse battery";

    private readonly string _folder = Directory.CreateTempSubdirectory("ww-data-").FullName;
    private WebApplicationFactory<Program>? _factory;

    public TestDatabase Database { get; } = new(server);

    public FakeClock Clock { get; } = new(Instant.FromUtc(2025, 3, 1, 12, 0));

    public DatabaseCalls Calls { get; } = new();

    public IServiceProvider Services => Factory.Services;

    private WebApplicationFactory<Program> Factory => _factory!;

    public async ValueTask InitializeAsync()
    {
        await Database.InitializeAsync();
        _factory = new WebApplicationFactory<Program>().WithWebHostBuilder(host => host
            .UseSetting(DatabaseServer.Variable, Database.Address.Owner)
            .UseSetting(DataFolder.Variable, _folder)
            .UseSetting(ServiceRoles.Variable, "web")
            .UseSetting("WORKWINDOWS_DEMO", "off")
            .UseSetting("WORKWINDOWS_LOG_LEVEL", "Warning")
            .ConfigureTestServices(services => services.AddSingleton<IClock>(Clock)
                .ConfigureDbContext<WorkWindowsDb>(options => options.AddInterceptors(Calls))));
    }

    /// <summary>A client that has not signed in, keeps cookies and does not follow redirects.</summary>
    public HttpClient Anonymous() => Factory.CreateClient(new() { AllowAutoRedirect = false });

    /// <summary>The same service with settings of its own.</summary>
    public WebApplicationFactory<Program> With(params (string Key, string Value)[] settings) => Factory.WithWebHostBuilder(host =>
    {
        foreach (var (key, value) in settings)
            host.UseSetting(key, value);
    });

    /// <summary>A client that sends an API key of the role.</summary>
    public async Task<HttpClient> MachineAsync(Guid organizationId, Role role = Role.Consultant)
    {
        var secret = RandomNumberGenerator.GetBytes(32);
        await using var db = Database.Open(organizationId);
        var key = new ApiKey
        {
            Name = $"{role}",
            SecretHash = SHA256.HashData(secret),
            Role = role,
            CreatedAt = Clock.GetCurrentInstant(),
        };
        db.Add(key);
        await db.SaveChangesAsync();
        var text = $"ww.{organizationId:N}.{key.Id:N}.{System.Buffers.Text.Base64Url.EncodeToString(secret)}";
        var client = Anonymous();
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", text);
        return client;
    }

    /// <returns>The id of a new person whose password is <see cref="Password"/>.</returns>
    public async Task<Guid> AddPersonAsync(Guid organizationId, string email, Role role)
    {
        await using var scope = Services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(organizationId);
        var person = new Person { UserName = email, Email = email, DisplayName = email, Role = role };
        var people = scope.ServiceProvider.GetRequiredService<UserManager<Person>>();
        Assert.True((await people.CreateAsync(person, Password)).Succeeded);
        return person.Id;
    }

    /// <summary>A client that has signed in on the page, or has tried to.</summary>
    public async Task<(HttpClient Client, HttpResponseMessage Answer)> SignInAsync(
        string email, string password = Password)
    {
        var client = Anonymous();
        return (client, await client.SignInAsync(email, password));
    }

    public async ValueTask DisposeAsync()
    {
        if (_factory is not null)
            await _factory.DisposeAsync();
        await Database.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }
}
