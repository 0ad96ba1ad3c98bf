namespace WorkWindows.Service.Rules;

public static class RuleServices
{
    /// <summary>Exceptions to rules, and the rule packs of organizations.</summary>
    public static void AddRules(this IHostApplicationBuilder builder)
    {
        builder.Services.AddScoped<OverrideHandler>();
        builder.Services.AddScoped<PackHandler>();
    }

    public static void MapRules(this IEndpointRouteBuilder app)
    {
        app.MapOverrides();
        app.MapPacks();
    }
}
