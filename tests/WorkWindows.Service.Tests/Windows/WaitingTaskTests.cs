using Microsoft.Extensions.DependencyInjection;
using Shouldly;
using WorkWindows.Engine.Days;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Tests.Windows;

public sealed class WaitingTaskTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Task_WaitsForWork_UntilThatIsRecordedAsDone()
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        var client = await service.MachineAsync(organization);
        var (_, parcel) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI");
        var hinge = (await Land.TaskAsync(client, parcel, "hinge-cut")).Id();
        var tie = (await Land.TaskAsync(client, parcel, "tie-down")).Id();
        await using (var db = service.Database.Open(organization))
        {
            db.Add(new TaskPrerequisite { TaskId = tie, PrerequisiteId = hinge });
            await db.SaveChangesAsync();
        }

        TaskWords.WaitsFor(await SummaryAsync(organization, tie)).ShouldBe(
            "Waits for: Hinge cut. It is not recorded as done.");
        TaskWords.WaitsFor(await SummaryAsync(organization, hinge)).ShouldBeNull();

        await client.PutAsync($"/api/tasks/{hinge}/completion", new { completedOn = "2025-02-01" });

        TaskWords.WaitsFor(await SummaryAsync(organization, tie)).ShouldBeNull();
    }

    private async Task<TaskSummary> SummaryAsync(Guid organization, Guid task)
    {
        await using var scope = service.Services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(organization);
        var db = scope.ServiceProvider.GetRequiredService<WorkWindowsDb>();
        var evaluated = await scope.ServiceProvider.GetRequiredService<TaskEvaluator>().EvaluateAsync(
            db.PlannedTasks.Where(row => row.Id == task), new DaySpan(new(2025, 3, 1), 10), CancellationToken.None);
        return evaluated.Single().Task;
    }
}
