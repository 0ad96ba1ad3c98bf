namespace WorkWindows.Service.Landowners;

public static class LandServices
{
    /// <summary>The pages of landowners.</summary>
    public static void AddLandowners(this IHostApplicationBuilder builder)
    {
        builder.Services.AddScoped<LandReader>();
        builder.Services.AddScoped<LandLinks>();
    }
}
