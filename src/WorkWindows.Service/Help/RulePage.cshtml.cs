using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace WorkWindows.Service.Help;

/// <summary>What a rule says, of which work, how binding it is and where it is stated.</summary>
public sealed class RulePageModel(HelpShelf shelf) : PageModel
{
    /// <summary>The rule in each pack that has it.</summary>
    public IReadOnlyList<HelpRule> Rules { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(string id, CancellationToken cancellation)
    {
        Rules = [.. (await shelf.RulesAsync(cancellation)).Where(rule => rule.Rule.Id == id)];
        return Rules.Count == 0 ? NotFound() : Page();
    }
}
