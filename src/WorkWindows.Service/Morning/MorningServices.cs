namespace WorkWindows.Service.Morning;

public static class MorningServices
{
    /// <summary>What was last said of tasks, and the pages over all of them.</summary>
    public static void AddMorning(this IHostApplicationBuilder builder)
    {
        builder.Services.AddScoped<OutlookReader>();
        builder.Services.AddScoped<WaitingReader>();
        builder.Services.AddScoped<FirstLook>();
    }
}
