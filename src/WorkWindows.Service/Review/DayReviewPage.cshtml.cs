using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using NodaTime;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Review;

public sealed class DayReviewModel(ReviewHandler reviews) : PageModel
{
    public ReviewedTask Task { get; private set; } = null!;

    public LocalDate Day { get; private set; }

    /// <summary>Null when nothing was decided about the day.</summary>
    public DayReview? Review { get; private set; }

    /// <summary>The reader asked for the outcome of the replay.</summary>
    [BindProperty(SupportsGet = true, Name = "replay")]
    public bool IsReplayed { get; set; }

    /// <summary>The reader asked what is said of the day with what is known now.</summary>
    [BindProperty(SupportsGet = true, Name = "now")]
    public bool IsCompared { get; set; }

    public async Task<IActionResult> OnGetAsync(
        Guid id, string date, Guid? decision, CancellationToken cancellation)
    {
        if (AskedDays.Date("date", date, new()) is not { } day)
            return NotFound();
        var (task, review) = await reviews.ReadAsync(id, day, decision, IsCompared, cancellation);
        if (task is null || (decision is not null && review is null))
            return NotFound();
        (Task, Day, Review) = (task, day, review);
        return Page();
    }
}
