using Hangfire.PostgreSql;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;

namespace WorkWindows.Service.Storage;

/// <summary>
/// Brings a database to the state this version needs. Safe to run twice, and by several instances at once.
/// </summary>
public static class DatabaseMigrator
{
    public const string JobSchema = "hangfire";

    private const long MigrationLock = 0x4D494752;

    /// <summary>Another instance may be migrating a large table.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(30);

    public static async Task MigrateAsync(DatabaseAddress address, CancellationToken cancellation)
    {
        var options = new DbContextOptionsBuilder<WorkWindowsDb>();
        UseDatabase(options, address.Owner);
        await using var db = new WorkWindowsDb(options.Options);
        db.Database.SetCommandTimeout(Patience);
        await CreateDatabaseAsync(db, cancellation);
        // Held until the connection closes: the steps that follow are for one instance at a time.
        await db.Database.OpenConnectionAsync(cancellation);
        await db.Database.ExecuteSqlAsync($"select pg_advisory_lock({MigrationLock})", cancellation);
        await CreateAppRoleAsync(db, address.AppPassword, cancellation);
        await db.Database.MigrateAsync(cancellation);
        // The application may ask which migrations there are: being ready depends on it.
        await db.Database.ExecuteSqlRawAsync(
            $"grant select on \"__EFMigrationsHistory\" to {DatabaseAddress.AppRole}", cancellation);
        await InstallJobSchemaAsync(address, db, cancellation);
    }

    public static void UseDatabase(DbContextOptionsBuilder options, string connectionString) =>
        options.UseNpgsql(connectionString, npgsql => npgsql.UseNodaTime()).UseSnakeCaseNamingConvention();

    private static async Task CreateDatabaseAsync(WorkWindowsDb db, CancellationToken cancellation)
    {
        var creator = db.GetService<IRelationalDatabaseCreator>();
        if (await creator.ExistsAsync(cancellation))
            return;
        try
        {
            await creator.CreateAsync(cancellation);
        }
        catch (PostgresException fault) when (fault.SqlState is PostgresErrorCodes.DuplicateDatabase
            or PostgresErrorCodes.UniqueViolation)
        {
            // Another instance created it between the question and the answer.
        }
    }

    /// <remarks>
    /// A role belongs to the whole server, so instances on other databases may be at it too: whoever comes second
    /// finds what it wanted.
    /// </remarks>
    private static async Task CreateAppRoleAsync(WorkWindowsDb db, string? password, CancellationToken cancellation)
    {
        // A hexadecimal password needs no quoting, and DDL takes no parameters.
        var setPassword = password is null ? "null;" : $"alter role {DatabaseAddress.AppRole} password '{password}';";
        var sql = $"""
            do $$
            begin
              if not exists (select from pg_roles where rolname = '{DatabaseAddress.AppRole}') then
                create role {DatabaseAddress.AppRole} login nosuperuser nobypassrls nocreatedb nocreaterole;
              end if;
            exception when duplicate_object or unique_violation then null;
            end $$;
            do $$
            begin
              {setPassword}
            exception when internal_error then
              if sqlerrm <> 'tuple concurrently updated' then raise; end if;
            end $$;
            """;
        await db.Database.ExecuteSqlRawAsync(sql, cancellation);
    }

    private static async Task InstallJobSchemaAsync(
        DatabaseAddress address, WorkWindowsDb db, CancellationToken cancellation)
    {
        await db.Database.ExecuteSqlRawAsync(
            $"create schema if not exists {JobSchema}; grant usage, create on schema {JobSchema} to {DatabaseAddress.AppRole}",
            cancellation);
        await using var connection = new NpgsqlConnection(address.App);
        await connection.OpenAsync(cancellation);
        PostgreSqlObjectsInstaller.Install(connection, JobSchema);
    }
}
