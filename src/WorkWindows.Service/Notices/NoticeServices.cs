using Microsoft.Extensions.Options;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Morning;
using WorkWindows.Service.Notices.Calendars;
using WorkWindows.Service.Notices.Certificates;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Notices.Unsubscribe;
using WorkWindows.Service.Notices.Webhooks;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

public static class NoticeServices
{
    /// <summary>The nightly run, the outbox, and on workers their schedule.</summary>
    public static void AddNotices(this IHostApplicationBuilder builder)
    {
        var services = builder.Services;
        services.AddOptions<MailOptions>().BindConfiguration(MailOptions.Section)
            .ValidateDataAnnotations().ValidateOnStart();
        var folder = Path.Combine(DataFolder.Of(builder.Configuration[DataFolder.Variable]), "outbox");
        services.AddSingleton<IMailTransport>(provider =>
            provider.GetRequiredService<IOptions<MailOptions>>() is { Value.Host.Length: > 0 } options
                ? new SmtpTransport(options)
                : new OutboxFolder(folder));
        services.AddSingleton<CalendarFeed>();
        services.AddScoped<ChoiceHandler>();
        services.AddScoped<ReaderUnits>();
        services.AddScoped<CertificateHandler>();
        services.AddScoped<OutlookKeeper>();
        services.AddScoped<NightReader>();
        services.AddScoped<NightWriter>();
        services.AddScoped<NightlyRun>();
        services.AddScoped<PromptLook>();
        services.AddScoped<LookRound>();
        services.AddScoped<OutageWatch>();
        services.AddOptions<WebhookOptions>().BindConfiguration(WebhookOptions.Section)
            .ValidateDataAnnotations().ValidateOnStart();
        services.AddSingleton<WebhookTransport>();
        services.AddSingleton<UnsubscribeLink>();
        services.AddSingleton<UnsubscribeDesk>();
        services.AddScoped<Delivery>();
        services.AddScoped<LastLook>();
        services.AddScoped<DeadLetters>();
        services.AddScoped<MessageReader>();
        services.AddScoped<MessageHandler>();
        services.AddScoped<BounceHandler>();
        services.AddScoped<Outbox>();
        services.AddScoped<SentMark>();
        services.AddScoped<OutboxRound>();
        services.AddScoped<NightlySchedule>();
        if (ServiceRoles.Of(builder.Configuration) != ServiceRole.Web)
            services.AddHostedService<NightlyScheduleStartup>();
    }

    public static void MapNotices(this IEndpointRouteBuilder app)
    {
        app.MapNightlyRun();
        app.MapMessages();
        app.MapChoices();
        app.MapCertificates();
        CalendarFeed.Map(app);
    }
}
