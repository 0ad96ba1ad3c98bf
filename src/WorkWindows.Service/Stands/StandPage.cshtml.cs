using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace WorkWindows.Service.Stands;

/// <summary>What stands on a parcel, what is left after a removal, and what takes a hinge.</summary>
public sealed class StandPageModel(StandReader reader) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Guid Id { get; set; }

    /// <summary>Percent felled of each row of the inventory.</summary>
    [BindProperty(SupportsGet = true)]
    public double?[] Felled { get; set; } = [];

    /// <summary>The pocket of hinged trees that is meant, acres.</summary>
    [BindProperty(SupportsGet = true)]
    public double? PocketAcres { get; set; }

    public StandView View { get; private set; } = null!;

    public Guid PropertyId { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellation)
    {
        if (await reader.ReadAsync(Id, cancellation) is not { } input)
            return NotFound();
        // A box that was emptied fells nothing.
        double[] felled = [.. Felled.Select(percent => percent ?? 0)];
        var faults = StandEndpoints.Check(felled, PocketAcres, input.Rows.Count);
        foreach (var complaint in faults.Errors.Values.SelectMany(messages => messages))
            ModelState.AddModelError("", complaint);
        PropertyId = input.PropertyId;
        var isAccepted = ModelState.IsValid;
        View = StandView.Of(input, isAccepted ? felled : [], isAccepted ? PocketAcres : null);
        return Page();
    }
}
