using System.ComponentModel.DataAnnotations;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using NodaTime.Text;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Safety.CheckIns;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Safety.Checklists;

/// <summary>
/// The sheet of the tailgate briefing, which prints on one page, and who is called from the property.
/// </summary>
[Authorize(Policy = Access.Work)]
public sealed class BriefingModel(
    ChecklistReader checklists, WatchReader watches, PropertyHandler properties, WorkWindowsDb db,
    IAuthorizationService access) : PageModel
{
    public BriefingSheet Sheet { get; private set; } = null!;

    /// <summary>The reader may enter who is called.</summary>
    public bool MayEnter { get; private set; }

    /// <summary>Who is called, as the form enters it.</summary>
    [BindProperty]
    public EmergencyForm Entry { get; set; } = new(null, null, null, null, null);

    /// <summary>
    /// How to get there and in, as the form enters it, the whole of it, however much the sheet shows. A page that was
    /// kept from before it could be entered sends none, and takes nothing away.
    /// </summary>
    [BindProperty]
    [DisplayFormat(ConvertEmptyStringToNull = false)]
    public string? AccessNotes { get; set; }

    public async Task<IActionResult> OnGetAsync(Guid id, string? date, CancellationToken cancellation)
    {
        if (await FindAsync(id, date, cancellation) is not { } sheet)
            return NotFound();
        (Entry, AccessNotes) = (sheet.Emergency, sheet.WayIn);
        return await ShowAsync(sheet);
    }

    public async Task<IActionResult> OnPostAsync(Guid id, string? date, CancellationToken cancellation)
    {
        if (!(await access.AuthorizeAsync(User, Access.Plan)).Succeeded)
            return Forbid();
        if (await FindAsync(id, date, cancellation) is not { } sheet)
            return NotFound();
        var entered = await properties.EnterPlaceAsync(sheet.PropertyId, AccessNotes, Entry, cancellation);
        if (entered.Outcome == ChangeOutcome.Done)
            return LocalRedirect($"/tasks/{id}/briefing?date={LocalDatePattern.Iso.Format(sheet.List.Day)}");
        foreach (var complaint in entered.Complaints)
            ModelState.AddModelError("", complaint);
        return await ShowAsync(sheet);
    }

    private async Task<IActionResult> ShowAsync(BriefingSheet sheet)
    {
        Sheet = sheet;
        MayEnter = (await access.AuthorizeAsync(User, Access.Plan)).Succeeded;
        return Page();
    }

    private async Task<BriefingSheet?> FindAsync(Guid id, string? date, CancellationToken cancellation)
    {
        var day = LocalDatePattern.Iso.Parse(date ?? "");
        return await checklists.ReadAsync(id, day.Success ? day.Value : null, cancellation) is { } list
            ? await BriefingSheet.OfAsync(list, db, watches, cancellation)
            : null;
    }
}
