using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Maps;

/// <summary>Where a consultant draws or corrects the boundary of a parcel.</summary>
[Authorize(Access.Plan)]
public sealed class BoundaryPageModel(WorkWindowsDb db, ParcelHandler parcels, DrawingReader drawings) : PageModel
{
    [BindProperty]
    public DrawingEntry Entry { get; set; } = new();

    /// <summary>Whether it was saved just now.</summary>
    [BindProperty(SupportsGet = true, Name = "saved")]
    public bool IsSaved { get; set; }

    public Parcel Parcel { get; private set; } = null!;

    public DrawingView Drawing { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(Guid id, CancellationToken cancellation)
    {
        if (await FindAsync(id, cancellation) is not { } parcel)
            return NotFound();
        Entry.Corners = Corners.Written(parcel.BoundaryGeoJson, parcel.Latitude, parcel.Longitude);
        return await ShowAsync(parcel, cancellation);
    }

    public async Task<IActionResult> OnPostAsync(Guid id, CancellationToken cancellation)
    {
        if (await FindAsync(id, cancellation) is not { } parcel)
            return NotFound();
        if (Entry.Move is not null)
            return await ShowAsync(parcel, cancellation);
        var faults = new FieldFaults();
        if (Corners.Read(Entry.Corners, faults) is { } geometry)
        {
            var change = await parcels.UpdateAsync(id, new(null, parcel.Name, geometry, parcel.ElevationM, null, null), cancellation);
            if (change.Outcome == ChangeOutcome.Done)
                return LocalRedirect($"/parcels/{id}/boundary?saved=true");
            foreach (var complaint in change.Complaints)
                ModelState.AddModelError("", complaint);
        }
        foreach (var complaint in faults.Errors.Values.SelectMany(messages => messages))
            ModelState.AddModelError("", complaint);
        return await ShowAsync(parcel, cancellation);
    }

    private Task<Parcel?> FindAsync(Guid id, CancellationToken cancellation) =>
        db.Parcels.AsNoTracking().Include(parcel => parcel.Property).SingleOrDefaultAsync(parcel => parcel.Id == id, cancellation);

    private async Task<IActionResult> ShowAsync(Parcel parcel, CancellationToken cancellation)
    {
        Parcel = parcel;
        Drawing = await drawings.ReadAsync(Entry, parcel.PropertyId, parcel.Id, cancellation);
        return Page();
    }
}
