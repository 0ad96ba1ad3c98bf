using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Crews;

/// <summary>A week of crews and days, where a consultant puts work on another day or crew.</summary>
[Authorize(Access.Work)]
public sealed class BoardPageModel(BoardReader boards, BookingHandler bookings, WeekHandler week, Caller caller) : PageModel
{
    /// <summary>A day of the week to show; the week that it is where none is given.</summary>
    [BindProperty(SupportsGet = true, Name = "from")]
    public string? From { get; set; }

    public Board Board { get; private set; } = null!;

    public bool MayPlan => caller.Role == Role.Consultant;

    public async Task OnGetAsync(CancellationToken cancellation) => await ShowAsync(cancellation);

    public async Task<IActionResult> OnPostMoveAsync(Guid id, string? to, string? day, CancellationToken cancellation) =>
        await EndAsync(() => bookings.MoveAsync(id, new(Id(to), CrewEntry.Date(day)), cancellation), cancellation);

    public async Task<IActionResult> OnPostAddAsync(Guid id, string? to, string? day, CancellationToken cancellation) =>
        await EndAsync(
            () => bookings.AddAsync(new(id, Id(to), CrewEntry.Date(day), null), cancellation), cancellation);

    public async Task<IActionResult> OnPostRemoveAsync(Guid id, CancellationToken cancellation) =>
        await EndAsync(() => bookings.RemoveAsync(id, cancellation), cancellation);

    private async Task<IActionResult> EndAsync<T>(Func<Task<Change<T>>> ask, CancellationToken cancellation)
    {
        if (!MayPlan)
            return Forbid();
        var change = await ask();
        if (change.Outcome == ChangeOutcome.Done)
            return RedirectToPage(new { from = From });
        foreach (var complaint in change.Complaints)
            ModelState.AddModelError("", complaint);
        await ShowAsync(cancellation);
        return Page();
    }

    private async Task ShowAsync(CancellationToken cancellation)
    {
        var today = await week.TodayAsync(cancellation);
        Board = await boards.ReadAsync(AskedDays.WeekOf(From, today), today, cancellation);
    }

    private static Guid? Id(string? text) => Guid.TryParse(text, out var id) ? id : null;
}
