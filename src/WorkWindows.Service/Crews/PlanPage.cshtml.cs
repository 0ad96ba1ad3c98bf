using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Crews;

/// <summary>Where a consultant has a plan made, sees what it changes, and publishes it.</summary>
[Authorize(Access.Plan)]
public sealed class PlanPageModel(WorkWindowsDb db, PlanHandler plans, Caller caller) : PageModel
{
    private const int PastShown = 20;

    /// <summary>The plan to look at; the newest one where none is given.</summary>
    [BindProperty(SupportsGet = true, Name = "plan")]
    public Guid? Shown { get; set; }

    public StoredPlan? Plan { get; private set; }

    public PlanContent? Made { get; private set; }

    public IReadOnlyList<StoredPlan> Past { get; private set; } = [];

    public IReadOnlyDictionary<Guid, string> Crews { get; private set; } = new Dictionary<Guid, string>();

    public IReadOnlyDictionary<Guid, string> Tasks { get; private set; } = new Dictionary<Guid, string>();

    public DateTimeZone Zone { get; private set; } = DateTimeZone.Utc;

    public Task OnGetAsync(CancellationToken cancellation) => ShowAsync(cancellation);

    public async Task<IActionResult> OnPostAsync(int? days, int? seed, CancellationToken cancellation) =>
        await EndAsync(await plans.ProposeAsync(new(days, seed), cancellation), cancellation);

    public async Task<IActionResult> OnPostPublishAsync(Guid id, CancellationToken cancellation) =>
        await EndAsync(await plans.PublishAsync(id, cancellation), cancellation);

    public async Task<IActionResult> OnPostDiscardAsync(Guid id, CancellationToken cancellation) =>
        await EndAsync(await plans.DiscardAsync(id, cancellation), cancellation);

    private async Task<IActionResult> EndAsync(Change<StoredPlan> change, CancellationToken cancellation)
    {
        if (change.Outcome == ChangeOutcome.Done)
            return RedirectToPage(new { plan = change.Value!.Id });
        foreach (var complaint in change.Complaints)
            ModelState.AddModelError("", complaint);
        await ShowAsync(cancellation);
        return Page();
    }

    private async Task ShowAsync(CancellationToken cancellation)
    {
        var zone = await db.Organizations.Where(row => row.Id == caller.OrganizationId).Select(row => row.TimeZone)
            .SingleAsync(cancellation);
        Zone = DateTimeZoneProviders.Tzdb[zone];
        Past = await db.CrewPlans.AsNoTracking().OrderByDescending(plan => plan.ProposedAt).Take(PastShown).ToListAsync(cancellation);
        Plan = Shown is { } id
            ? await db.CrewPlans.AsNoTracking().SingleOrDefaultAsync(plan => plan.Id == id, cancellation)
            : Past is [var newest, ..] ? newest : null;
        if (Plan is null)
            return;
        Made = PlanContent.Read(Plan);
        Crews = await db.Crews.ToDictionaryAsync(crew => crew.Id, crew => crew.Name, cancellation);
        var ids = Made.Bookings.Select(booking => Guid.Parse(booking.TaskId)).Distinct().ToList();
        var tasks = await db.PlannedTasks.Where(task => ids.Contains(task.Id)).Select(task => new
        {
            task.Id,
            task.PracticeId,
            Parcel = task.Parcel.Name,
            Property = task.Parcel.Property.Name,
        }).ToListAsync(cancellation);
        Tasks = tasks.ToDictionary(
            row => row.Id, row => $"{Engine.Practices.PracticeCatalogue.Find(row.PracticeId)?.Name}, {row.Property}, {row.Parcel}");
    }

    /// <summary>As in 'published Thu 26 Nov 2026, 14:05 by mara@example.org'.</summary>
    public string Says(StoredPlan plan) => plan.Status switch
    {
        PlanStatus.Proposed => $"proposed {DayWords.At(plan.ProposedAt, Zone)} by {plan.ProposedBy}",
        PlanStatus.Published => $"published {DayWords.At(plan.DecidedAt!.Value, Zone)} by {plan.DecidedBy}",
        PlanStatus.Discarded => $"discarded {DayWords.At(plan.DecidedAt!.Value, Zone)} by {plan.DecidedBy}",
    };
}
