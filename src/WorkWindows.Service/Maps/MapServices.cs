namespace WorkWindows.Service.Maps;

public static class MapServices
{
    /// <summary>Maps and boundaries.</summary>
    public static void AddMaps(this IHostApplicationBuilder builder)
    {
        builder.Services.AddScoped<DrawingReader>();
        builder.Services.AddOptions<MapOptions>().BindConfiguration(MapOptions.Section).ValidateDataAnnotations().ValidateOnStart();
    }
}
