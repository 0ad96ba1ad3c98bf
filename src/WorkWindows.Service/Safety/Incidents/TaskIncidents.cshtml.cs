using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Safety.CheckIns;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Safety.Incidents;

/// <summary>Records what went wrong at a task, and shows what was recorded.</summary>
[Authorize(Policy = Access.Work)]
public sealed class TaskIncidentsModel(
    WindowHandler windows, IncidentHandler handler, IncidentReader reader, Caller caller, WorkWindowsDb db,
    IClock clock) : PageModel
{
    private static readonly LocalDateTimePattern Minute =
        LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");

    public TaskSummary Planned { get; private set; } = null!;

    public IReadOnlyList<IncidentView> Incidents { get; private set; } = [];

    [BindProperty]
    public IncidentEntry Entry { get; set; } = new();

    public Task<IActionResult> OnGetAsync(Guid id, Guid? corrects, CancellationToken cancellation)
    {
        Entry.CorrectsId = corrects;
        return ShowAsync(id, cancellation);
    }

    public async Task<IActionResult> OnPostAsync(Guid id, CancellationToken cancellation)
    {
        if (await FindAsync(id, cancellation) is not { } task)
            return NotFound();
        var change = await handler.RecordAsync(
            id, new(Entry.Kind, InZone(task.Zone), Entry.WhatHappened, Entry.WhoWasTold, Entry.CorrectsId),
            await Signer.OfAsync(caller, db, cancellation), cancellation);
        if (change.Outcome == ChangeOutcome.Done)
            return LocalRedirect($"/tasks/{id}/incidents");
        foreach (var complaint in change.Complaints)
            ModelState.AddModelError("", complaint);
        return await ShowAsync(id, cancellation);
    }

    /// <summary>
    /// The local time that was entered as the API takes it; what is no time is left for it to refuse.
    /// </summary>
    private string? InZone(DateTimeZone zone) =>
        Entry.HappenedAt is { } text && Minute.Parse(text) is { Success: true, Value: var local }
            ? OffsetDateTimePattern.Rfc3339.Format(local.InZoneLeniently(zone).ToOffsetDateTime())
            : Entry.HappenedAt;

    private async Task<TaskSummary?> FindAsync(Guid id, CancellationToken cancellation) =>
        await windows.TodayAsync(id, cancellation) is { } today
            ? (await windows.EvaluateAsync(id, new(today, 1), cancellation))?.Task
            : null;

    private async Task<IActionResult> ShowAsync(Guid id, CancellationToken cancellation)
    {
        if (await FindAsync(id, cancellation) is not { } task)
            return NotFound();
        Planned = task;
        Incidents = await reader.OfTaskAsync(id, cancellation) ?? [];
        Entry.HappenedAt ??= Minute.Format(clock.GetCurrentInstant().InZone(task.Zone).LocalDateTime);
        return Page();
    }
}

/// <summary>An incident as the page's form enters it; the time is of the property's zone.</summary>
public sealed class IncidentEntry
{
    public string? Kind { get; set; }
    public string? HappenedAt { get; set; }
    public string? WhatHappened { get; set; }
    public string? WhoWasTold { get; set; }
    public Guid? CorrectsId { get; set; }
}
