using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace WorkWindows.Service.Notices.Unsubscribe;

/// <summary>
/// Where the link of a mail leads. Looking turns nothing off, because mail programs open links to check them; a mail
/// program that is asked to turn it off posts at once (RFC 8058), from nowhere and without a cookie: the signature is
/// what counts.
/// </summary>
[AllowAnonymous]
[IgnoreAntiforgeryToken]
public sealed class UnsubscribeModel(UnsubscribeDesk desk) : PageModel
{
    internal UnsubscribeView View { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(
        Guid organization, Guid person, string kind, string? signature, CancellationToken cancellation) =>
        Show(await desk.ReadAsync(organization, person, kind, signature, cancellation));

    public async Task<IActionResult> OnPostAsync(
        Guid organization, Guid person, string kind, string? signature, CancellationToken cancellation) =>
        Show(await desk.TurnOffAsync(organization, person, kind, signature, cancellation));

    private IActionResult Show(UnsubscribeView? view)
    {
        if (view is null)
            return NotFound();
        View = view;
        return Page();
    }
}
