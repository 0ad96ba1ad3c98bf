using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace WorkWindows.Service.Help;

/// <summary>The texts of docs/, as they are in the version that runs.</summary>
public sealed class DocsPageModel : PageModel
{
    private static readonly Dictionary<string, string> OtherTypes = new(StringComparer.Ordinal)
    {
        [".jpg"] = "image/jpeg",
        [".svg"] = "image/svg+xml",
        [".json"] = "application/json",
        [".csv"] = "text/csv",
        [".geojson"] = "application/geo+json",
        [".yaml"] = "text/plain",
    };

    public Manual Manual { get; private set; } = null!;

    public IActionResult OnGet(string path)
    {
        if (Manual.Open(path) is not { } content)
            return NotFound();
        if (OtherTypes.TryGetValue(Path.GetExtension(path), out var type))
            return File(content, type);
        Manual = Manual.Read(content);
        return Page();
    }
}
