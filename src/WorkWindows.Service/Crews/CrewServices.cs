using WorkWindows.Service.Tasks;

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
        builder.Services.AddScoped<CrewCalendar>();
        builder.Services.AddScoped<BoardReader>();
        builder.Services.AddScoped<PlanReader>();
        builder.Services.AddScoped<PlanHandler>();
        builder.Services.AddScoped<BookingStore>();
        builder.Services.AddScoped<BookingHandler>();
        builder.Services.AddScoped<TaskHours>();
        builder.Services.AddScoped<WeightsHandler>();
        builder.Services.AddScoped<SeasonQuestions>();
    }

    public static void MapCrewPlans(this IEndpointRouteBuilder app)
    {
        app.MapCrews();
        app.MapPlans();
        CrewCalendar.Map(app);
    }
}
