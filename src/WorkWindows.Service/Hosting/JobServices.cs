using Hangfire;
using Hangfire.PostgreSql;
using Hangfire.PostgreSql.Factories;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Hosting;

public static class JobServices
{
    private static readonly PostgreSqlStorageOptions JobsInDatabase = new()
    {
        SchemaName = DatabaseMigrator.JobSchema,
        PrepareSchemaIfNecessary = false,
    };

    /// <summary>Every instance can put jobs in the queue; only workers take them out.</summary>
    public static void AddJobs(this IHostApplicationBuilder builder)
    {
        // One of its own, and not the one that the process used last: several services may run in a process.
        builder.Services.AddSingleton<JobStorage>(scope => new PostgreSqlStorage(
            new NpgsqlConnectionFactory(
                scope.GetRequiredService<DatabaseServer>().Address.App, JobsInDatabase), JobsInDatabase));
        // What jobs write is stored or sent, and has nothing of the region of whoever began them.
        foreach (var filter in GlobalJobFilters.Filters.Where(filter => filter.Instance is CaptureCultureAttribute).ToList())
            GlobalJobFilters.Filters.Remove(filter.Instance);
        builder.Services.AddHangfire((scope, hangfire) => hangfire
            .SetDataCompatibilityLevel(CompatibilityLevel.Version_180)
            .UseSimpleAssemblyNameTypeSerializer()
            .UseRecommendedSerializerSettings()
            .UseStorage(scope.GetRequiredService<JobStorage>()));
        if (ServiceRoles.Of(builder.Configuration) != ServiceRole.Web)
        {
            builder.Services.AddHangfireServer(options => options.Queues = [JobQueues.Default]);
            builder.Services.AddHangfireServer(options => options.Queues = [JobQueues.Prompt]);
        }
    }
}

/// <summary>Each with workers of its own.</summary>
public static class JobQueues
{
    /// <summary>What may take minutes: nights, weather, imports.</summary>
    public const string Default = "default";

    /// <summary>What somebody in the woods waits for, and must not wait behind a night.</summary>
    public const string Prompt = "prompt";
}
