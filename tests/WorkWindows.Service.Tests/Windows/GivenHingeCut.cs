using Microsoft.Extensions.DependencyInjection;
using WorkWindows.Engine.Days;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;
using WorkWindows.Service.Tests.Weather;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Tests.Windows;

/// <summary>A hinge cut near State College, with the winds of Minneapolis, which alone has some.</summary>
internal static class GivenHingeCut
{
    public static async Task<(Guid Property, Guid Task)> CreateAsync(HttpClient client, string species = "red maple")
    {
        await GivenStation.StateCollegeAsync(client);
        await GivenStation.MinneapolisAsync(client, year => year is >= 2000 and <= 2009);
        var (property, parcel) = await Land.CreateAsync(client, -77.94, 40.80, "42027", "PA", species);
        await client.PutAsync($"/api/parcels/{parcel}/station", new
        {
            temperature = GivenStation.StateCollege,
            wind = GivenStation.Minneapolis,
        });
        return (property, (await Land.TaskAsync(client, parcel, "hinge-cut")).Id());
    }

    /// <summary>Stores decisions about the days of 2004.</summary>
    public static async Task DecideAsync(ServiceFixture service, Guid organization)
    {
        await using var scope = service.Services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(organization);
        var db = scope.ServiceProvider.GetRequiredService<WorkWindowsDb>();
        var days = DaySpan.Between(new(2004, 1, 1), new(2004, 12, 31));
        var evaluated = await scope.ServiceProvider.GetRequiredService<TaskEvaluator>()
            .EvaluateAsync(db.PlannedTasks, days, CancellationToken.None);
        await scope.ServiceProvider.GetRequiredService<DecisionStore>()
            .AddChangedAsync(evaluated, days, CancellationToken.None);
        await db.SaveChangesAsync();
    }
}
