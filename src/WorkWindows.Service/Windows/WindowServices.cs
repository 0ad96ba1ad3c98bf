using WorkWindows.Service.Chances;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Windows;

public static class WindowServices
{
    public static void AddWindows(this IHostApplicationBuilder builder)
    {
        builder.Services.AddMemoryCache();
        builder.Services.AddSingleton<RulePacks>();
        builder.Services.AddScoped<PackShelf>();
        builder.Services.AddScoped<PropertyRecords>();
        builder.Services.AddScoped<WeatherRecords>();
        builder.Services.AddScoped<TaskEvaluator>();
        builder.Services.AddScoped<DecisionStore>();
        builder.Services.AddScoped<DecisionComparison>();
        builder.Services.AddScoped<SiteNotes>();
        builder.Services.AddScoped<WindowHandler>();
        builder.Services.AddScoped<WeekHandler>();
    }

    public static void MapWindows(this IEndpointRouteBuilder app)
    {
        app.MapTaskWindows();
        app.MapExplanation();
        app.MapWeek();
        app.MapDecisions();
        app.MapChances();
    }
}
