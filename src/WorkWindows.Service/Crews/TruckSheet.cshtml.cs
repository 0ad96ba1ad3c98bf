using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Crews;

/// <summary>A week's work on paper, for the truck.</summary>
[Authorize(Access.Work)]
public sealed class TruckSheetModel(BoardReader boards, WorkWindowsDb db, WeekHandler week) : PageModel
{
    /// <summary>A day of the week to print.</summary>
    [BindProperty(SupportsGet = true, Name = "from")]
    public string? From { get; set; }

    /// <summary>The crew; null for all.</summary>
    [BindProperty(SupportsGet = true, Name = "crew")]
    public Guid? Crew { get; set; }

    public Board Board { get; private set; } = null!;

    /// <summary>How each property is reached, by its id.</summary>
    public IReadOnlyDictionary<Guid, Property> Properties { get; private set; } = new Dictionary<Guid, Property>();

    public IEnumerable<BoardRow> Rows => Board.Rows.Where(row => Crew is null || row.CrewId == Crew);

    public async Task OnGetAsync(CancellationToken cancellation)
    {
        var today = await week.TodayAsync(cancellation);
        Board = await boards.ReadAsync(AskedDays.WeekOf(From, today), today, cancellation);
        var ids = Rows.SelectMany(row => row.Cells).SelectMany(cell => cell.Cards)
            .Select(card => card.Task.PropertyId).ToHashSet();
        Properties = await db.Properties.AsNoTracking().Where(property => ids.Contains(property.Id))
            .ToDictionaryAsync(property => property.Id, cancellation);
    }
}
