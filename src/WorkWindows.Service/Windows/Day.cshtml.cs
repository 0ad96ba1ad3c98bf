using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Daylight;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Windows;

public sealed class DayModel(WindowHandler windows, VisibleTasks tasks) : PageModel
{
    private static readonly LocalDate Earliest = new(1850, 1, 1);

    public DayReasons View { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(Guid id, string? date, CancellationToken cancellation)
    {
        if (!LocalDatePattern.Iso.Parse(date ?? "").TryGetValue(default, out var day))
            return NotFound();
        // A form can only put the day behind the question mark.
        if (!RouteData.Values.ContainsKey(nameof(date)))
            return LocalRedirect(DayWords.AddressOf(id, day));

        if (await windows.TodayAsync(id, cancellation) is not { } today
            || day < Earliest || day > SeasonView.DaysOf(null, today).Last
            || await windows.EvaluateAsync(id, DayReasons.DaysAround(day), cancellation) is not { } evaluated)
        {
            return NotFound();
        }
        var place = await tasks.All.Where(task => task.Id == id)
            .Select(task => new { task.Parcel.Latitude, task.Parcel.Longitude }).SingleAsync(cancellation);
        View = DayReasons.Of(
            evaluated, day, today, SunTimes.On(day, evaluated.Task.Zone, place.Latitude, place.Longitude));
        return Page();
    }
}
