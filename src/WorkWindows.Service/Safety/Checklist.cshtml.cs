using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Safety;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Safety;

public sealed class ChecklistModel(WindowHandler windows) : PageModel
{
    private const int MostDaysAway = 366;

    public TaskSummary Planned { get; private set; } = null!;

    public DayStatement Statement { get; private set; } = null!;

    public LocalDate Day { get; private set; }

    /// <summary>What the rules ask for on the day, besides what always goes with the work.</summary>
    public IReadOnlyList<RuleReason> OnTheDay { get; private set; } = [];

    /// <summary>The rules that forbid working alone.</summary>
    public IReadOnlyList<RuleReason> Company { get; private set; } = [];

    public IReadOnlyList<IGrouping<SafetyItemKind, SafetyItem>> Parts { get; private set; } = [];

    public static string Heading(SafetyItemKind kind) => kind switch
    {
        SafetyItemKind.Wear => "Wear",
        SafetyItemKind.Carry => "Carry",
        SafetyItemKind.Do => "Do",
        SafetyItemKind.Stop => "Stop and leave",
    };

    public async Task<IActionResult> OnGetAsync(Guid id, string? date, CancellationToken cancellation)
    {
        if (await windows.TodayAsync(id, cancellation) is not { } today)
            return NotFound();
        Day = LocalDatePattern.Iso.Parse(date ?? "").TryGetValue(today, out var day) ? day : today;
        if (Math.Abs(Period.DaysBetween(today, Day)) > MostDaysAway
            || await windows.EvaluateAsync(id, new DaySpan(Day, 1), cancellation) is not { } found)
        {
            return NotFound();
        }
        var explanation = Explanation.Of(found.Evaluation, Day);
        Planned = found.Task;
        Statement = DayStatement.Of(explanation, today);
        OnTheDay =
        [
            .. explanation.Verdicts
                .Where(verdict => verdict.Spoke && verdict.Rule.Effect is Effect.Limits or Effect.Requires)
                .Select(verdict => RuleReason.Of(verdict, Day)),
        ];
        Company = [.. CompanyRules.Of(explanation).Select(verdict => RuleReason.Of(verdict, Day))];
        Parts = [.. SafetyChecklist.For(found.Task.Practice).Items.GroupBy(item => item.Kind)];
        return Page();
    }
}
