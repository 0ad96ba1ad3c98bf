using System.Collections.Immutable;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>What reached nobody and why, what waits, and what was sent lately.</summary>
[Authorize(Policy = Access.Plan)]
public sealed class MessagesModel(MessageReader reader, MessageHandler handler, WorkWindowsDb db, IClock clock)
    : PageModel
{
    /// <summary>What is shown of messages that need nothing done.</summary>
    public const int DaysBack = 7;

    /// <summary>
    /// What comes after the messages that were not delivered, and what stands there when there is none.
    /// </summary>
    public static ImmutableArray<(MessageState State, string Title, string? None)> Sections { get; } =
    [
        (MessageState.Waiting, "Waiting", "Nothing waits."),
        (MessageState.Sent, $"Sent in the last {DaysBack} days", "Nothing was sent."),
        (MessageState.Dropped, "Not needed any more", null),
    ];

    public DateTimeZone Zone { get; private set; } = DateTimeZone.Utc;

    /// <summary>Those of one state, the newest first.</summary>
    public ILookup<MessageState, MessageRow> Rows { get; private set; } =
        Array.Empty<MessageRow>().ToLookup(row => row.State);

    public Task OnGetAsync(CancellationToken cancellation) => ShowAsync(cancellation);

    public async Task<IActionResult> OnPostResendAsync(Guid id, CancellationToken cancellation) =>
        await AnswerAsync(await handler.ResendAsync(id, cancellation), cancellation);

    public async Task<IActionResult> OnPostClearAsync(Guid id, CancellationToken cancellation) =>
        await AnswerAsync(await handler.ClearAsync(id, cancellation), cancellation);

    private async Task<IActionResult> AnswerAsync<T>(Change<T> change, CancellationToken cancellation)
    {
        // What an old page shows may have been done by somebody else, and then all is well.
        if (change.Outcome is ChangeOutcome.Done or ChangeOutcome.NotFound)
            return LocalRedirect("/messages");
        foreach (var complaint in change.Complaints)
            ModelState.AddModelError("", complaint);
        await ShowAsync(cancellation);
        return Page();
    }

    private async Task ShowAsync(CancellationToken cancellation)
    {
        Zone = DateTimeZoneProviders.Tzdb[
            await db.Organizations.Select(organization => organization.TimeZone).SingleAsync(cancellation)];
        var since = clock.GetCurrentInstant() - Duration.FromDays(DaysBack);
        var shown = new List<MessageView>();
        foreach (var state in new[] { MessageState.GivenUp, MessageState.Waiting })
            shown.AddRange(await reader.ListAsync(state, null, cancellation));
        foreach (var state in new[] { MessageState.Sent, MessageState.Dropped })
            shown.AddRange(await reader.ListAsync(state, since, cancellation));
        var rows = MessageRow.Of(await reader.WithTwinsAsync(shown, cancellation));
        Rows = rows.OrderByDescending(row => row.First.CreatedAt).ToLookup(row => row.State);
    }
}
