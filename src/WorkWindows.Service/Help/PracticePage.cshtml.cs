using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Stands.Hours;

namespace WorkWindows.Service.Help;

/// <summary>What a practice is, what comes first, how long it takes and which rules speak of it.</summary>
public sealed class PracticePageModel(HelpShelf shelf) : PageModel
{
    private static readonly string[] Units = ["acres", "stems", "trees", "feet"];

    public Practice Practice { get; private set; } = null!;

    public IReadOnlyList<HelpRule> Rules { get; private set; } = [];

    public IEnumerable<Order> First => Sequence.All.Where(order => order.Later == Practice);

    public IEnumerable<Order> Later => Sequence.All.Where(order => order.First == Practice);

    /// <summary>Hours of one person for one of each unit, where something is known of them.</summary>
    public IEnumerable<(string Unit, HoursEstimate Hours)> Hours => Units
        .Select(unit => (Unit: unit, Hours: PracticeHours.Of(Practice, 1, unit)))
        .Where(one => one.Hours is not null).Select(one => (one.Unit, one.Hours!));

    /// <summary>What is told apart by it, such as 'wounds living trees'.</summary>
    public IEnumerable<string> Traits => Enum.GetValues<PracticeTraits>()
        .Where(trait => trait != PracticeTraits.None && Practice.Traits.HasFlag(trait)).Select(HelpWords.Of);

    public async Task<IActionResult> OnGetAsync(string id, CancellationToken cancellation)
    {
        if (PracticeCatalogue.Find(id) is not { } practice)
            return NotFound();
        Practice = practice;
        Rules = [.. (await shelf.RulesAsync(cancellation)).Where(rule => rule.SpeaksOf(practice))];
        return Page();
    }

    public IEnumerable<IGrouping<string, HelpRule>> ByEffect() =>
        Rules.OrderBy(rule => rule.Rule.Effect).ThenBy(rule => rule.Rule.Title, StringComparer.Ordinal)
            .GroupBy(rule => Wording.Of(rule.Rule.Effect));
}
