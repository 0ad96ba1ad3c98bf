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

    public DateTimeZone Zone { get; private set; } = DateTimeZone.Utc;

    public IReadOnlyList<MessageView> GivenUp { get; private set; } = [];

    public IReadOnlyList<MessageView> Waiting { get; private set; } = [];

    public IReadOnlyList<MessageView> Sent { get; private set; } = [];

    public IReadOnlyList<MessageView> Dropped { get; private set; } = [];

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
        GivenUp = await reader.ListAsync(MessageState.GivenUp, null, cancellation);
        Waiting = await reader.ListAsync(MessageState.Waiting, null, cancellation);
        Sent = await reader.ListAsync(MessageState.Sent, since, cancellation);
        Dropped = await reader.ListAsync(MessageState.Dropped, since, cancellation);
    }
}
