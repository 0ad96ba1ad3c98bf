using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Tests.Rules;

internal static class Nights
{
    /// <summary>Evaluates every task of an organization and keeps what was decided.</summary>
    public static async Task DecideAsync(ServiceFixture service, Guid organization, LocalDate first, LocalDate last)
    {
        await using var scope = service.Services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(organization);
        var db = scope.ServiceProvider.GetRequiredService<WorkWindowsDb>();
        var days = DaySpan.Between(first, last);
        var evaluated = await scope.ServiceProvider.GetRequiredService<TaskEvaluator>()
            .EvaluateAsync(db.PlannedTasks, days, CancellationToken.None);
        await scope.ServiceProvider.GetRequiredService<DecisionStore>()
            .AddChangedAsync(evaluated, days, CancellationToken.None);
        await db.SaveChangesAsync();
    }
}
