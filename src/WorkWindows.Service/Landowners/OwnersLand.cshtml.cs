using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using WorkWindows.Service.Accounts;

namespace WorkWindows.Service.Landowners;

/// <summary>What a landowner sees, for their consultant, who gives and takes the personal link.</summary>
[Authorize(Access.Plan)]
public sealed class OwnersLandModel(LandReader reader, LandLinks links) : PageModel
{
    public LandView View { get; private set; } = null!;

    /// <summary>The address of the personal link; null where there is none.</summary>
    public string? Link { get; private set; }

    public async Task<IActionResult> OnGetAsync(Guid id, CancellationToken cancellation)
    {
        if (await reader.ReadAsync(id, Request, cancellation) is not { } view)
            return NotFound();
        (View, Link) = (view, await links.ReadAsync(id, Request, cancellation));
        return Page();
    }

    public async Task<IActionResult> OnPostRenewAsync(Guid id, CancellationToken cancellation) =>
        await links.RenewAsync(id, cancellation) ? RedirectToPage(new { id }) : NotFound();

    public async Task<IActionResult> OnPostWithdrawAsync(Guid id, CancellationToken cancellation) =>
        await links.WithdrawAsync(id, cancellation) ? RedirectToPage(new { id }) : NotFound();
}
