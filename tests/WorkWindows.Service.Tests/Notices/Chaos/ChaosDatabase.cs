using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;
using Npgsql;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Tests.Notices.Chaos;

/// <summary>A server of its own, so that it can be stopped and started, with messages that are due.</summary>
internal sealed class ChaosDatabase : IAsyncDisposable
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), $"wx-{Guid.NewGuid():N}"[..11]);
    private readonly LocalCluster _cluster;

    public ChaosDatabase()
    {
        _cluster = new LocalCluster(
            _folder, Environment.GetEnvironmentVariable(PostgresBinaries.Variable), "fsync = off\n", NullLogger.Instance);
        // Connections of a pool would outlive the server that they were made to.
        Address = DatabaseAddress.Of(
            new NpgsqlConnectionStringBuilder(_cluster.ConnectionString) { Pooling = false }.ConnectionString);
    }

    public DatabaseAddress Address { get; }

    /// <summary>For the workers, which pool connections as the service does.</summary>
    public string ConnectionString => _cluster.ConnectionString;

    public async Task StartAsync()
    {
        await _cluster.StartAsync(CancellationToken.None);
        await DatabaseMigrator.MigrateAsync(Address, CancellationToken.None);
    }

    public void Stop() => _cluster.Stop();

    public Task StartAgainAsync() => _cluster.StartAsync(CancellationToken.None);

    /// <returns>The id of a new organization that has the numbered messages to send.</returns>
    public async Task<Guid> AddAsync(IEnumerable<int> numbers, Instant now)
    {
        var organization = new Organization { Name = "Org", TimeZone = "America/Detroit", PostalAddress = "1 Mill Road" };
        await using var db = Open(organization.Id);
        db.Add(organization);
        await db.SaveChangesAsync();
        db.AddRange(numbers.Select(number => new Message
        {
            DedupeKey = $"{number}",
            Kind = number % 4 == 0 ? NoticeKinds.StopWork : NoticeKinds.Reminder,
            ToAddress = ChaosMailServer.Address(number),
            Subject = $"Message {number}",
            TextBody = "Stop.\n",
            HtmlBody = "<p>Stop.</p>",
            MessageId = $"{number}.{organization.Id:N}@example.org",
            CreatedAt = now,
            NextAttemptAt = now,
        }));
        await db.SaveChangesAsync();
        return organization.Id;
    }

    public async Task<List<Message>> RowsAsync(Guid organization)
    {
        await using var db = Open(organization);
        return await db.Messages.AsNoTracking().ToListAsync();
    }

    /// <returns>Whether every message is marked; false while the database is away.</returns>
    public async Task<bool> IsAllSentAsync(IEnumerable<Guid> organizations)
    {
        try
        {
            foreach (var organization in organizations)
            {
                await using var db = Open(organization);
                if (await db.Messages.AnyAsync(message => message.SentAt == null))
                    return false;
            }
            return true;
        }
        catch (Exception fault) when (fault is NpgsqlException or InvalidOperationException)
        {
            return false;
        }
    }

    public ValueTask DisposeAsync()
    {
        _cluster.Stop();
        Directory.Delete(_folder, recursive: true);
        return ValueTask.CompletedTask;
    }

    private WorkWindowsDb Open(Guid organizationId)
    {
        var organization = new CurrentOrganization();
        organization.Set(organizationId);
        var options = new DbContextOptionsBuilder<WorkWindowsDb>();
        DatabaseMigrator.UseDatabase(options, Address.App);
        return new(options.AddInterceptors(new OrganizationOnConnection(organization)).Options);
    }
}
