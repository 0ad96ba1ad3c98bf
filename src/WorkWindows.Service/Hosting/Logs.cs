using Serilog;
using Serilog.Events;
using Serilog.Formatting.Compact;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Hosting;

internal static class Logs
{
    /// <summary>'json' writes one object a line, for collectors; anything else a line for people.</summary>
    private const string FormatVariable = "WORKWINDOWS_LOG";

    /// <summary>
    /// The least level that is written: Verbose, Debug, Information (the default), Warning, Error, Fatal.
    /// </summary>
    private const string LevelVariable = "WORKWINDOWS_LOG_LEVEL";

    private const string Template = "{Timestamp:HH:mm:ss} {Level:u3} {Message:lj}{NewLine}{Exception}";

    public static void AddLogs(this WebApplicationBuilder builder) => builder.Services.AddSerilog(logs =>
    {
        logs.MinimumLevel.Is(builder.Configuration.GetValue(LevelVariable, LogEventLevel.Information))
            .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
            .MinimumLevel.Override("Microsoft.AspNetCore.DataProtection", LogEventLevel.Error)
            .MinimumLevel.Override("Hangfire", LogEventLevel.Warning)
            // What it refused shows in the request's line already.
            .MinimumLevel.Override(typeof(ApiKeyAuthentication).FullName!, LogEventLevel.Warning)
            // The handler of exceptions logs a failure once; these would log it again.
            .MinimumLevel.Override("Microsoft.EntityFrameworkCore", LogEventLevel.Fatal)
            // Ends the start, and is told on the console in one line.
            .Filter.ByExcluding(entry => entry.Exception is SetupException)
            .Enrich.FromLogContext();
        if (builder.Configuration[FormatVariable] == "json")
            logs.WriteTo.Console(new CompactJsonFormatter());
        else
            logs.WriteTo.Console(outputTemplate: Template);
    });
}
