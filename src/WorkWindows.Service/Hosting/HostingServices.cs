using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;
using NodaTime.Serialization.SystemTextJson;

namespace WorkWindows.Service.Hosting;

public static class HostingServices
{
    private const string DefaultAddress = "http://127.0.0.1:5080";

    /// <summary>The files of the service lie beside it, wherever it is started from.</summary>
    public static WebApplicationOptions Options(string[] arguments) =>
        new() { Args = arguments, ContentRootPath = AppContext.BaseDirectory };

    public static void AddHosting(this WebApplicationBuilder builder)
    {
        builder.WebHost.UseStaticWebAssets();
        if (string.IsNullOrEmpty(builder.Configuration[WebHostDefaults.ServerUrlsKey]))
            builder.WebHost.UseUrls(DefaultAddress);
        builder.AddLogs();

        var services = builder.Services;
        services.AddSingleton(DateTimeZoneProviders.Tzdb);
        services.ConfigureHttpJsonOptions(options => Configure(options.SerializerOptions));
        services.Configure<RouteHandlerOptions>(options => options.ThrowOnBadRequest = true);
        services.AddProblems();
        services.AddOpenApi(options => options.AddSchemaTransformer(NodaTimeSchemas.DescribeAsync));
        services.AddRazorPages(options => options.RootDirectory = "/")
            .AddMvcOptions(options => options.ModelBinderProviders.Insert(0, new PlainNumbers()));
        services.AddHttpContextAccessor();
        services.AddHostedService<ReadyNotice>();
    }

    /// <summary>
    /// Dates as ISO 8601, enumerations in kebab case as in rule packs; a field nobody knows is an error, not a whim.
    /// </summary>
    private static void Configure(JsonSerializerOptions json)
    {
        json.ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);
        json.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false));
        json.NumberHandling = JsonNumberHandling.Strict;
        json.UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow;
    }
}
