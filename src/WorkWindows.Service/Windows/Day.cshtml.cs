using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Daylight;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Rules;
using WorkWindows.Service.Safety.Checklists;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Windows;

public sealed class DayModel(
    WindowHandler windows, VisibleTasks tasks, OverrideHandler overrides, DecisionComparison decisions,
    ChecklistReader checklists, IAuthorizationService access, Caller caller)
    : PageModel
{
    private static readonly LocalDate Earliest = new(1850, 1, 1);

    public DayReasons View { get; private set; } = null!;

    /// <summary>What changed since a decision; null when nothing did.</summary>
    public SinceDecision? Since { get; private set; }

    /// <summary>Whether a crew may begin on the day; null for a reader who does not work there.</summary>
    public Release? Release { get; private set; }

    /// <summary>The day is not over, and the reader may make exceptions.</summary>
    public bool MayExcept { get; private set; }

    /// <summary>The exception that is being made, as it was entered.</summary>
    [BindProperty]
    public ExceptionEntry Entry { get; set; } = new();

    /// <summary>Reasons as the page lists them.</summary>
    public ReasonList List(IEnumerable<RuleReason> reasons) => new([.. reasons], View.Day, MayExcept, Entry);

    public async Task<IActionResult> OnGetAsync(Guid id, string? date, CancellationToken cancellation)
    {
        if (!LocalDatePattern.Iso.Parse(date ?? "").TryGetValue(default, out var day))
            return NotFound();
        // A form can only put the day behind the question mark.
        if (!RouteData.Values.ContainsKey(nameof(date)))
            return LocalRedirect(DayWords.AddressOf(id, day));

        return await ShowAsync(id, day, cancellation);
    }

    /// <summary>Makes an exception for the task from the day on; what stands against it is said on the page.</summary>
    public async Task<IActionResult> OnPostExceptionAsync(
        Guid id, string? date, CancellationToken cancellation)
    {
        if (!LocalDatePattern.Iso.Parse(date ?? "").TryGetValue(default, out var day))
            return NotFound();
        if (!(await access.AuthorizeAsync(User, Access.Sign)).Succeeded)
            return Forbid();
        var place = await tasks.All.Where(task => task.Id == id)
            .Select(task => new { task.ParcelId, task.Parcel.PropertyId }).SingleOrDefaultAsync(cancellation);
        if (place is null)
            return NotFound();
        var until = LocalDatePattern.Iso.Parse(Entry.Until ?? "");
        var made = await overrides.CreateAsync(
            place.PropertyId, new(Entry.RuleId, place.ParcelId, id, day, until.Success ? until.Value : null, Entry.Reason),
            caller.PersonId!.Value, cancellation);
        if (made.Outcome == ChangeOutcome.Done)
            return LocalRedirect(DayWords.AddressOf(id, day));
        foreach (var complaint in made.Complaints)
            ModelState.AddModelError("", complaint);
        return await ShowAsync(id, day, cancellation);
    }

    private async Task<IActionResult> ShowAsync(Guid id, LocalDate day, CancellationToken cancellation)
    {
        if (await windows.TodayAsync(id, cancellation) is not { } today
            || day < Earliest || day > SeasonView.DaysOf(null, today).Last
            || await windows.EvaluateAsync(id, DayReasons.DaysFor(day), cancellation) is not { } evaluated)
        {
            return NotFound();
        }
        var place = await tasks.All.Where(task => task.Id == id)
            .Select(task => new { task.Parcel.Latitude, task.Parcel.Longitude }).SingleAsync(cancellation);
        View = DayReasons.Of(
            evaluated, day, today, SunTimes.On(day, evaluated.Task.Zone, place.Latitude, place.Longitude));
        Since = await decisions.OfDayAsync(evaluated, day, cancellation);
        if (caller.Role != Role.Landowner)
            Release = (await checklists.ComposeAsync(evaluated, day, today, cancellation)).Release;
        MayExcept = day >= today && (await access.AuthorizeAsync(User, Access.Sign)).Succeeded;
        return Page();
    }
}

/// <summary>Rules of a day, each with the form of an exception where the reader may make one.</summary>
public sealed record ReasonList(IReadOnlyList<RuleReason> Reasons, LocalDate Day, bool MayExcept, ExceptionEntry Entry);

/// <summary>An exception as the page's form enters it.</summary>
public sealed class ExceptionEntry
{
    public string? RuleId { get; set; }

    /// <summary>The day on which it expires.</summary>
    public string? Until { get; set; }

    public string? Reason { get; set; }
}
