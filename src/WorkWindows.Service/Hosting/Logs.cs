using Serilog;
using Serilog.Events;
using Serilog.Formatting.Compact;

namespace WorkWindows.Service.Hosting;

internal static class Logs
{
    /// <summary>'json' writes one object a line, for collectors; anything else a line for people.</summary>
    private const string FormatVariable = "WORKWINDOWS_LOG";

    private const string Template = "{Timestamp:HH:mm:ss} {Level:u3} {Message:lj}{NewLine}{Exception}";

    public static void AddLogs(this WebApplicationBuilder builder) => builder.Services.AddSerilog(logs =>
    {
        logs.MinimumLevel.Information()
            .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
            .MinimumLevel.Override("Hangfire", LogEventLevel.Warning)
            // The handler of exceptions logs a failure once; these would log it again.
            .MinimumLevel.Override("Microsoft.EntityFrameworkCore", LogEventLevel.Fatal)
            .Enrich.FromLogContext();
        if (builder.Configuration[FormatVariable] == "json")
            logs.WriteTo.Console(new CompactJsonFormatter());
        else
            logs.WriteTo.Console(outputTemplate: Template);
    });
}
