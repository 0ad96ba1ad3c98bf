using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>
/// Where the link of a call leads. Looking takes nothing over: mail programs open links to check them.
/// </summary>
[AllowAnonymous]
public sealed class AlarmModel(AlarmDesk desk) : PageModel
{
    internal AlarmView View { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(
        Guid organization, Guid call, string? signature, CancellationToken cancellation) =>
        Show(await desk.ReadAsync(organization, call, signature, cancellation));

    public async Task<IActionResult> OnPostAsync(
        Guid organization, Guid call, string? signature, CancellationToken cancellation) =>
        Show(await desk.TakeOverAsync(organization, call, signature, cancellation));

    private IActionResult Show(AlarmView? view)
    {
        if (view is null)
            return NotFound();
        View = view;
        return Page();
    }
}
