using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Audit;
using WorkWindows.Service.Commands;
using WorkWindows.Service.Crews;
using WorkWindows.Service.Demo;
using WorkWindows.Service.Help;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Landowners;
using WorkWindows.Service.Maps;
using WorkWindows.Service.Morning;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Prescriptions;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Records;
using WorkWindows.Service.Review;
using WorkWindows.Service.Rules;
using WorkWindows.Service.Safety;
using WorkWindows.Service.Stands;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Weather;
using WorkWindows.Service.Windows;
using WorkWindows.Service.WorkDone;

#pragma warning disable RS0030 // The one place where real time comes in.
var clock = new MicrosecondClock(SystemClock.Instance);
#pragma warning restore RS0030
return await CommandLine.RunAsync(args, clock, arguments =>
{
    var builder = WebApplication.CreateBuilder(HostingServices.Options(arguments));
    builder.Services.AddSingleton<IClock>(clock);
    builder.AddHosting();
    builder.AddStorage();
    builder.AddAccounts();
    builder.AddProperties();
    builder.AddTasks();
    builder.AddWeather();
    builder.AddWindows();
    builder.AddRecords();
    builder.AddReview();
    builder.AddStands();
    builder.AddRules();
    builder.AddAudit();
    builder.AddJobs();
    builder.AddNotices();
    builder.AddSafety();
    builder.AddCrews();
    builder.AddWorkDone();
    builder.AddPrescriptions();
    builder.AddMorning();
    builder.AddLandowners();
    builder.AddMaps();
    builder.AddHelp();
    builder.AddDemo();

    var app = builder.Build();
    app.UseHosting();
    app.MapHealth();
    if (ServiceRoles.Of(app.Configuration) == ServiceRole.Worker)
        return app;
    app.MapHosting();
    app.MapAccounts();
    app.MapProperties();
    app.MapTasks();
    app.MapWeather();
    app.MapWindows();
    app.MapReview();
    app.MapStands();
    app.MapRules();
    app.MapAudit();
    app.MapNotices();
    app.MapSafety();
    app.MapCrewPlans();
    app.MapWorkDone();
    app.MapPrescriptions();
    app.MapHelp();
    return app;
});
