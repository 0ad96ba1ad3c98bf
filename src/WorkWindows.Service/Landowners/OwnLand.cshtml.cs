using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using WorkWindows.Service.Accounts;

namespace WorkWindows.Service.Landowners;

/// <summary>A landowner's land, signed in.</summary>
[Authorize]
public sealed class OwnLandModel(LandReader reader, Caller caller) : PageModel
{
    public LandView View { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellation)
    {
        if (caller.PersonId is not { } person || await reader.ReadAsync(person, Request, cancellation) is not { } view)
            return LocalRedirect("/");
        View = view;
        return Page();
    }
}
