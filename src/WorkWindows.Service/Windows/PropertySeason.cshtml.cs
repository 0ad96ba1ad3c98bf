using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Windows;

/// <summary>The coming season of all work on a property, under one row of months.</summary>
[Authorize]
public sealed class PropertySeasonModel(
    VisibleProperties properties, VisibleTasks tasks, TaskEvaluator evaluator, IClock clock) : PageModel
{
    public Guid Id { get; private set; }

    public string Name { get; private set; } = "";

    public LocalDate Today { get; private set; }

    public StripScale Scale { get; private set; } = null!;

    /// <summary>The temperatures of the first parcel with work; null where none is known.</summary>
    public TemperatureChart? Temperatures => Work.Count > 0 ? Work[0].Temperatures : null;

    /// <summary>The seasons of its work, by parcel.</summary>
    public IReadOnlyList<SeasonView> Work { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(Guid id, CancellationToken cancellation)
    {
        var property = await properties.All.Where(row => row.Id == id).Select(row => new { row.Name, row.TimeZone })
            .SingleOrDefaultAsync(cancellation);
        if (property is null)
            return NotFound();
        (Id, Name) = (id, property.Name);
        Today = clock.GetCurrentInstant().InZone(DateTimeZoneProviders.Tzdb[property.TimeZone]).Date;
        var days = SeasonView.DaysOf(null, Today);
        Scale = new(days);
        var inputs = await evaluator.ReadAsync(
            tasks.All.Where(task => task.Parcel.PropertyId == id && task.CompletedOn == null), days, cancellation);
        Work = [.. inputs.Select((input, index) => SeasonView.Of(input, days, Today, hasTemperatures: index == 0))];
        return Page();
    }
}
