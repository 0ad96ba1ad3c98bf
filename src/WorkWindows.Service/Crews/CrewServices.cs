namespace WorkWindows.Service.Crews;

public static class CrewServices
{
    /// <summary>Crews, their plans and the board.</summary>
    public static void AddCrews(this IHostApplicationBuilder builder)
    {
        builder.Services.AddScoped<CrewHandler>();
        builder.Services.AddScoped<EquipmentHandler>();
        builder.Services.AddScoped<AbsenceHandler>();
        builder.Services.AddScoped<DriveTimeHandler>();
    }

    public static void MapCrewPlans(this IEndpointRouteBuilder app) => app.MapCrews();
}
