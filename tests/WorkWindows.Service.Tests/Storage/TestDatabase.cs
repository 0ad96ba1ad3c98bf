using Microsoft.EntityFrameworkCore;
using Npgsql;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Tests.Storage;

/// <summary>A migrated, empty database for one test class: take it as an IClassFixture.</summary>
public sealed class TestDatabase(DatabaseFixture server) : IAsyncLifetime
{
    public DatabaseAddress Address { get; private set; } = null!;

    public async ValueTask InitializeAsync() => Address = await server.CloneAsync();

    public async ValueTask DisposeAsync() => await server.DropAsync(Address);

    /// <summary>The database as the application sees it when it works for the organization, or for none.</summary>
    public WorkWindowsDb Open(Guid? organizationId)
    {
        var organization = new CurrentOrganization();
        if (organizationId is { } id)
            organization.Set(id);
        var options = new DbContextOptionsBuilder<WorkWindowsDb>();
        DatabaseMigrator.UseDatabase(options, Address.App);
        return new WorkWindowsDb(options.AddInterceptors(new OrganizationOnConnection(organization)).Options);
    }

    /// <returns>The id of a new organization without rows.</returns>
    public async Task<Guid> AddOrganizationAsync(string name, string timeZone = "America/Detroit")
    {
        var organization =
            new Organization { Name = name, TimeZone = timeZone, PostalAddress = "1 Mill Road, Larkspur" };
        await using var db = Open(organization.Id);
        db.Add(organization);
        await db.SaveChangesAsync();
        return organization.Id;
    }

    /// <summary>A connection of the application's role, as raw SQL would use it.</summary>
    public async Task<NpgsqlConnection> ConnectAsync()
    {
        var connection = new NpgsqlConnection(Address.App);
        await connection.OpenAsync();
        return connection;
    }
}
