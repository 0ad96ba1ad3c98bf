using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Maps;

/// <summary>A parcel that is typed.</summary>
public sealed class ParcelEntry
{
    public string? Key { get; set; }
    public string? Name { get; set; }

    /// <summary>Metres above sea level; null where it is not known.</summary>
    public double? ElevationM { get; set; }
}

/// <summary>Where a consultant draws a new parcel of a property.</summary>
[Authorize(Access.Plan)]
public sealed class NewParcelPageModel(WorkWindowsDb db, ParcelHandler parcels, DrawingReader drawings) : PageModel
{
    [BindProperty]
    public ParcelEntry Parcel { get; set; } = new();

    [BindProperty]
    public DrawingEntry Entry { get; set; } = new();

    public Guid PropertyId { get; private set; }

    public string Property { get; private set; } = "";

    public DrawingView Drawing { get; private set; } = null!;

    public Task<IActionResult> OnGetAsync(Guid id, CancellationToken cancellation) => ShowAsync(id, cancellation);

    public async Task<IActionResult> OnPostAsync(Guid id, CancellationToken cancellation)
    {
        if (Entry.Move is not null || !ModelState.IsValid)
            return await ShowAsync(id, cancellation);
        var faults = new FieldFaults();
        if (Corners.Read(Entry.Corners, faults) is { } geometry)
        {
            var change = await parcels.CreateAsync(
                id, new(Parcel.Key, Parcel.Name, geometry, Parcel.ElevationM, null, null), cancellation);
            if (change.Outcome == ChangeOutcome.Done)
                return LocalRedirect($"/parcels/{change.Value!.Id}/boundary?saved=true");
            foreach (var complaint in change.Complaints)
                ModelState.AddModelError("", complaint);
        }
        foreach (var complaint in faults.Errors.Values.SelectMany(messages => messages))
            ModelState.AddModelError("", complaint);
        return await ShowAsync(id, cancellation);
    }

    private async Task<IActionResult> ShowAsync(Guid id, CancellationToken cancellation)
    {
        var name = await db.Properties.Where(property => property.Id == id).Select(property => property.Name)
            .SingleOrDefaultAsync(cancellation);
        if (name is null)
            return NotFound();
        (PropertyId, Property) = (id, name);
        Drawing = await drawings.ReadAsync(Entry, id, null, cancellation);
        return Page();
    }
}
