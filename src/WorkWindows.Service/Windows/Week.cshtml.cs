using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Windows;

public sealed class WeekModel(
    TaskEvaluator evaluator, VisibleTasks tasks, WeekHandler week, Caller caller) : PageModel
{
    [BindProperty(SupportsGet = true, Name = "property")]
    public Guid? Property { get; set; }

    [BindProperty(SupportsGet = true, Name = "practice")]
    public string? Practice { get; set; }

    [BindProperty(SupportsGet = true, Name = "today")]
    public bool WorkableToday { get; set; }

    public WeekFilter Filter => new(Property, Practice, WorkableToday);

    public WeekView View { get; private set; } = null!;

    public bool IsConsultant => caller.Role == Role.Consultant;

    public async Task OnGetAsync(CancellationToken cancellation)
    {
        var today = await week.TodayAsync(cancellation);
        var pending = tasks.All.Where(task => task.CompletedOn == null);
        View = WeekView.Of(
            await evaluator.EvaluateAsync(pending, WeekView.Horizon(today), cancellation), today, Filter);
    }
}
