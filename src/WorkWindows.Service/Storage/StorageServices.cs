using Microsoft.AspNetCore.DataProtection;

namespace WorkWindows.Service.Storage;

public static class StorageServices
{
    public static void AddStorage(this IHostApplicationBuilder builder)
    {
        var services = builder.Services;
        services.AddSingleton<DatabaseServer>();
        services.AddHostedService<DatabaseStartup>();
        services.AddHostedService<DatabaseWatch>();
        services.AddScoped<CurrentOrganization>();
        services.AddScoped<OrganizationOnConnection>();
        services.AddDbContext<WorkWindowsDb>((scope, options) =>
        {
            DatabaseMigrator.UseDatabase(options, scope.GetRequiredService<DatabaseServer>().Address.App);
            options.AddInterceptors(scope.GetRequiredService<OrganizationOnConnection>());
        });
        services.AddHealthChecks().AddCheck<DatabaseReady>("database");

        var keys = Path.Combine(DataFolder.Of(builder.Configuration[DataFolder.Variable]), "keys");
        Directory.CreateDirectory(
            keys, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        services.AddDataProtection().SetApplicationName("WorkWindows")
            .PersistKeysToFileSystem(new DirectoryInfo(keys));
    }
}
