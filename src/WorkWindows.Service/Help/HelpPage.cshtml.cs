using Microsoft.AspNetCore.Mvc.RazorPages;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Safety;
using WorkWindows.Service.Accounts;

namespace WorkWindows.Service.Help;

/// <summary>Where all that is explained is found.</summary>
public sealed class HelpPageModel(HelpShelf shelf, Caller caller) : PageModel
{
    public IReadOnlyList<HelpRule> Rules { get; private set; } = [];

    public static IEnumerable<Practice> Practices => PracticeCatalogue.All;

    public static IEnumerable<SafetyItem> Measures => SafetyChecklist.AllItems;

    public bool MayTour => caller.Role == Role.Consultant;

    public async Task OnGetAsync(CancellationToken cancellation) =>
        Rules = await shelf.RulesAsync(cancellation);
}
