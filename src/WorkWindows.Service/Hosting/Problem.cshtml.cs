using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace WorkWindows.Service.Hosting;

[AllowAnonymous, IgnoreAntiforgeryToken]
public sealed class ProblemModel : PageModel
{
    public string Title { get; private set; } = "";
    public string Advice { get; private set; } = "";

    public void OnGet() => Describe();

    public void OnPost() => Describe();

    private void Describe() => (Title, Advice) = Response.StatusCode switch
    {
        StatusCodes.Status400BadRequest => (
            "This request cannot be read", "The page may have been open too long. Go back, reload it and try again."),
        StatusCodes.Status403Forbidden => ("Not for your role", "Ask your consultant if you need to see this."),
        StatusCodes.Status404NotFound => ("There is no such page", "It may have been moved or deleted."),
        StatusCodes.Status503ServiceUnavailable => (
            "The database does not answer", "Nothing was stored. Try again in a moment."),
        _ => ("Something went wrong", "It has been logged. Try again in a moment."),
    };
}
