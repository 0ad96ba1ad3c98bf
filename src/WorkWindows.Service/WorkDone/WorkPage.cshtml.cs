using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Crews;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Safety.CheckIns;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.WorkDone;

/// <summary>Where a crew writes down what it has done.</summary>
[Authorize(Access.Work)]
[RequestSizeLimit((PhotoFile.Most + 1) * PhotoFile.MostBytes)]
public sealed class WorkPageModel(
    WindowHandler windows, WorkHandler work, TaskHandler tasks, TaskHours hours, WorkWindowsDb db, Caller caller) : PageModel
{
    public TaskSummary Planned { get; private set; } = null!;

    public IReadOnlyList<WorkView> Records { get; private set; } = [];

    public TaskTime Time { get; private set; } = null!;

    [BindProperty]
    public WorkEntry Entry { get; set; } = new();

    public async Task<IActionResult> OnGetAsync(Guid id, CancellationToken cancellation)
    {
        if (!await ShowAsync(id, cancellation))
            return NotFound();
        Entry = new() { Id = Guid.CreateVersion7(), Day = $"{await windows.TodayAsync(id, cancellation):R}", People = Planned.CrewSize };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(Guid id, CancellationToken cancellation)
    {
        if (!ModelState.IsValid)
            return await ShowAsync(id, cancellation) ? Page() : NotFound();
        var photos = new List<PhotoFile>();
        foreach (var file in Entry.Photos.Where(file => file.Length > 0))
        {
            using var bytes = new MemoryStream();
            await file.CopyToAsync(bytes, cancellation);
            photos.Add(new(bytes.ToArray()));
        }
        var change = await work.RecordAsync(
            id, Entry.Form(), photos, await Signer.OfAsync(caller, db, cancellation), cancellation);
        if (change.Outcome == ChangeOutcome.Done)
            return LocalRedirect($"/tasks/{id}/work");
        foreach (var complaint in change.Complaints)
            ModelState.AddModelError("", complaint);
        return await ShowAsync(id, cancellation) ? Page() : NotFound();
    }

    /// <summary>Somebody said too early that the work is done: what follows it has no dates again.</summary>
    public async Task<IActionResult> OnPostReopenAsync(Guid id, CancellationToken cancellation)
    {
        if (!await ShowAsync(id, cancellation))
            return NotFound();
        await tasks.CompleteAsync(id, null, cancellation);
        return LocalRedirect($"/tasks/{id}/work");
    }

    private async Task<bool> ShowAsync(Guid id, CancellationToken cancellation)
    {
        if (await windows.TodayAsync(id, cancellation) is not { } today
            || (await windows.EvaluateAsync(id, new(today, 1), cancellation))?.Task is not { } task)
        {
            return false;
        }
        Planned = task;
        Records = await WorkEndpoints.ReadAsync(db, id, cancellation);
        var row = await db.PlannedTasks.FindAsync([id], cancellation);
        Time = (await hours.OfAsync([row!], cancellation))[id];
        return true;
    }
}

/// <summary>A record as the page's form enters it.</summary>
public sealed class WorkEntry
{
    public Guid? Id { get; set; }
    public string? Day { get; set; }
    public int? People { get; set; }
    public decimal? Hours { get; set; }
    public decimal? Quantity { get; set; }
    public int? Stems { get; set; }
    public string? Problem { get; set; }
    public bool LeafOutSeen { get; set; }
    public bool IsLast { get; set; }
    public List<IFormFile> Photos { get; set; } = [];

    internal WorkForm Form() => new(
        Id, CrewEntry.Date(Day), People, Hours, Quantity, Stems, Problem, LeafOutSeen, IsLast);
}
