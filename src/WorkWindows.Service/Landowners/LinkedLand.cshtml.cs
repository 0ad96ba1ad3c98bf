using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Landowners;

/// <summary>A landowner's land behind their personal link: read in a scope of its own, whoever has signed in to the browser.</summary>
[AllowAnonymous]
public sealed class LinkedLandModel(IServiceScopeFactory scopes) : PageModel
{
    public LandView View { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(Guid organization, string? key, CancellationToken cancellation)
    {
        Response.Headers.CacheControl = "no-store";
        // Whoever follows a link from the page is not told where they come from.
        Response.Headers["Referrer-Policy"] = "no-referrer";
        if (string.IsNullOrEmpty(key))
            return NotFound();
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(organization);
        var owner = await scope.ServiceProvider.GetRequiredService<WorkWindowsDb>().NoticeSettings
            .Where(row => row.LandKey == key).Select(row => (Guid?)row.PersonId).SingleOrDefaultAsync(cancellation);
        if (owner is not { } person
            || await scope.ServiceProvider.GetRequiredService<LandReader>().ReadAsync(person, Request, cancellation) is not { } view)
        {
            return NotFound();
        }
        View = view;
        return Page();
    }
}
