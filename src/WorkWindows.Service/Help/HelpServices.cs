namespace WorkWindows.Service.Help;

public static class HelpServices
{
    /// <summary>Pages that explain.</summary>
    public static void AddHelp(this IHostApplicationBuilder builder) => builder.Services.AddScoped<HelpShelf>();
}
