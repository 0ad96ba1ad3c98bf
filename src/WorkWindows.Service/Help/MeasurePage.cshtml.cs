using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Safety;

namespace WorkWindows.Service.Help;

/// <summary>A line of checklists, with which work it goes and where it is stated.</summary>
public sealed class MeasurePageModel : PageModel
{
    public SafetyItem Item { get; private set; } = null!;

    /// <summary>The practices whose checklists have it.</summary>
    public IEnumerable<Practice> Practices => PracticeCatalogue.All.Where(practice => !Item.Practices.IsEmpty
        ? Item.Practices.Contains(practice.Id)
        : Item.Traits == PracticeTraits.None || (Item.Traits & practice.Traits) != 0);

    public IActionResult OnGet(string id)
    {
        if (SafetyChecklist.AllItems.FirstOrDefault(item => item.Id == id) is not { } item)
            return NotFound();
        Item = item;
        return Page();
    }
}
