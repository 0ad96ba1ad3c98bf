using System.ComponentModel.DataAnnotations;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace WorkWindows.Service.Accounts;

[AllowAnonymous]
public sealed class SignInModel(SignInAttempt attempt, SignInManager<Person> signIn) : PageModel
{
    [BindProperty, Required(ErrorMessage = "Enter the mail address."), Display(Name = "Mail address")]
    public string Email { get; set; } = "";

    [BindProperty, Required(ErrorMessage = "Enter the password.")]
    public string Password { get; set; } = "";

    [BindProperty(SupportsGet = true)]
    public string? ReturnUrl { get; set; }

    public IActionResult OnGet() => signIn.IsSignedIn(User) ? LocalRedirect("/") : Page();

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellation)
    {
        if (signIn.IsSignedIn(User))
            return LocalRedirect("/");
        if (!ModelState.IsValid)
            return Page();
        var result = await attempt.SignInAsync(Email, Password, cancellation);
        if (result.Succeeded)
            return LocalRedirect(Url.IsLocalUrl(ReturnUrl) ? ReturnUrl : "/");
        ModelState.AddModelError("", result.IsLockedOut
            ? "Too many failed attempts. Try again in 15 minutes, or ask your consultant for a new password."
            : "Mail address and password do not match.");
        return Page();
    }
}
