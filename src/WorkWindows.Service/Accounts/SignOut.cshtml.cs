using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace WorkWindows.Service.Accounts;

[AllowAnonymous]
public sealed class SignOutModel(SignInManager<Person> signIn) : PageModel
{
    public async Task<IActionResult> OnPostAsync()
    {
        await signIn.Context.SignOutAsync(IdentityConstants.ApplicationScheme);
        return LocalRedirect("/sign-in");
    }
}
