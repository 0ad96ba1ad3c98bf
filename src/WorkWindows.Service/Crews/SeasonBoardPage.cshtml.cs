using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Crews;

/// <summary>Half a year of crews and weeks.</summary>
[Authorize(Access.Work)]
public sealed class SeasonBoardPageModel(BoardReader boards, WeekHandler week) : PageModel
{
    private const int WeeksShown = 26;
    private const int DaysAWeek = 7;

    public SeasonBoard Board { get; private set; } = null!;

    public async Task OnGetAsync(CancellationToken cancellation)
    {
        var today = await week.TodayAsync(cancellation);
        var monday = today.PlusDays(IsoDayOfWeek.Monday - today.DayOfWeek);
        Board = SeasonBoard.Of(await boards.ReadAsync(new DaySpan(monday, WeeksShown * DaysAWeek), today, cancellation));
    }
}
