using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Demo;

/// <summary>
/// Invented land, work and weather for the demo organization, loaded as a consultant would load their own.
/// </summary>
internal sealed class DemoScenario(
    WorkWindowsDb db, ParcelImportHandler parcels, TaskImportHandler tasks, DemoWeather weather, DemoCrews crews,
    PromptLook look, IClock clock)
{
    /// <summary>Tasks that are scheduled, and how many days from the day of loading.</summary>
    private static readonly Dictionary<string, int> Scheduled = new()
    {
        ["tamarack-tie"] = 1,
        ["willow-plant"] = 2,
        ["quail-cleanup"] = 4,
    };

    public async Task LoadAsync(CancellationToken cancellation)
    {
        await weather.CreateAsync(cancellation);
        Accepted(await parcels.ImportAsync(Resource("demo-parcels.geojson"), cancellation));
        Accepted(await tasks.ImportAsync(Resource("demo-tasks.csv"), cancellation));
        var today = clock.GetCurrentInstant().InUtc().Date;
        var keys = Scheduled.Keys.ToList();
        var scheduled = await db.PlannedTasks.Where(task => keys.Contains(task.Key)).ToListAsync(cancellation);
        foreach (var task in scheduled)
            task.ScheduledOn = today.PlusDays(Scheduled[task.Key]);
        look.Note();
        await crews.AddAsync(today, scheduled.ToDictionary(task => task, task => task.ScheduledOn!.Value), cancellation);
    }

    private static Stream Resource(string name) => typeof(DemoScenario).Assembly.GetManifestResourceStream(name)
        ?? throw new InvalidOperationException($"{name} is not embedded in the assembly.");

    private static void Accepted<T>(ImportOutcome<T> outcome) where T : class
    {
        if (outcome.Stored is null)
            throw new InvalidOperationException($"The demo's own files are refused: {outcome.Faults}");
    }
}
