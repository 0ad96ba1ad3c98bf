using Hangfire;
using Hangfire.PostgreSql;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Hosting;

public static class JobServices
{
    /// <summary>Every instance can put jobs in the queue; only workers take them out.</summary>
    public static void AddJobs(this IHostApplicationBuilder builder)
    {
        builder.Services.AddHangfire((scope, hangfire) => hangfire
            .SetDataCompatibilityLevel(CompatibilityLevel.Version_180)
            .UseSimpleAssemblyNameTypeSerializer()
            .UseRecommendedSerializerSettings()
            .UsePostgreSqlStorage(
                storage => storage.UseNpgsqlConnection(scope.GetRequiredService<DatabaseServer>().Address.App),
                new PostgreSqlStorageOptions
                {
                    SchemaName = DatabaseMigrator.JobSchema,
                    PrepareSchemaIfNecessary = false,
                }));
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
