using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Safety.Checklists;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>
/// The crew's page: one big button, until when, and who is called. Every button works without scripts.
/// </summary>
[Authorize(Policy = Access.Work)]
public sealed class WatchModel(
    ChecklistReader checklists, WatchStart start, WatchHandler handler, WatchReader watches, AlarmLink link,
    IOptions<MailOptions> mail, Caller caller, WorkWindowsDb db, IClock clock) : PageModel
{
    public TaskSummary Planned { get; private set; } = null!;

    /// <summary>The watch that is on, or null.</summary>
    public WatchView? Watch { get; private set; }

    /// <summary>The watch that ended last, where none is on.</summary>
    public WatchView? Last { get; private set; }

    public Release Release { get; private set; } = null!;

    public IReadOnlyList<RuleReason> Company { get; private set; } = [];

    /// <summary>Whether a rule forbids one person to do this work alone.</summary>
    public bool ForbidsAlone { get; private set; }

    public IReadOnlyList<NamedPerson> People { get; private set; } = [];

    public bool MailLeaves => mail.Value.HasServer;

    public bool HasLinks => link.IsPossible;

    public bool IsLate => Watch is { } watch && clock.GetCurrentInstant() > watch.DueAt;

    [BindProperty]
    public WatchEntry Entry { get; set; } = new();

    public Task<IActionResult> OnGetAsync(Guid id, CancellationToken cancellation) => ShowAsync(id, cancellation);

    public async Task<IActionResult> OnPostStartAsync(Guid id, CancellationToken cancellation) => await AnswerAsync(
        id, await start.StartAsync(id, Entry.Form, await Signer.OfAsync(caller, db, cancellation), cancellation),
        cancellation);

    public Task<IActionResult> OnPostFineAsync(Guid id, Guid? watch, CancellationToken cancellation) =>
        SayAsync(id, watch, handler.CheckInAsync, cancellation);

    public Task<IActionResult> OnPostOutAsync(Guid id, Guid? watch, CancellationToken cancellation) =>
        SayAsync(id, watch, handler.EndAsync, cancellation);

    public Task<IActionResult> OnPostTakeOverAsync(Guid id, Guid? watch, CancellationToken cancellation) =>
        SayAsync(id, watch, handler.AcknowledgeAsync, cancellation);

    private async Task<IActionResult> SayAsync(
        Guid id, Guid? pressedOn, Func<Guid, Signer, CancellationToken, Task<Change<CrewWatch>>> say,
        CancellationToken cancellation)
    {
        // An old page of a watch that has ended shows what is the case now.
        if (await watches.OpenAsync(id, cancellation) is not { } open)
            return await ShowAsync(id, cancellation);
        if (pressedOn is { } pressed && pressed != open.Id)
        {
            ModelState.AddModelError(
                "", "That button was of an earlier watch, which is over. This is the one that is on: press again if you mean it.");
            return await ShowAsync(id, cancellation);
        }
        return await AnswerAsync(
            id, await say(open.Id, await Signer.OfAsync(caller, db, cancellation), cancellation), cancellation);
    }

    private async Task<IActionResult> AnswerAsync(Guid id, Change<CrewWatch> change, CancellationToken cancellation)
    {
        if (change.Outcome == ChangeOutcome.Done)
            return LocalRedirect($"/tasks/{id}/watch");
        foreach (var complaint in change.Complaints)
            ModelState.AddModelError("", complaint);
        db.ChangeTracker.Clear();
        return await ShowAsync(id, cancellation);
    }

    private async Task<IActionResult> ShowAsync(Guid id, CancellationToken cancellation)
    {
        if (await checklists.ReadAsync(id, day: null, cancellation) is not { } list)
            return NotFound();
        (Planned, Release) = (list.Task, list.Release);
        ForbidsAlone = CompanyRules.Forbidding(list.Explanation).Any();
        Company = [.. CompanyRules.Of(list.Explanation).Select(verdict => RuleReason.Of(verdict, list.Day))];
        var all = await watches.OfAsync(id, cancellation);
        Watch = all.FirstOrDefault(watch => watch.EndedAt is null);
        Last = Watch is null && all.Count > 0 ? all[0] : null;
        People = await db.People.Where(person => person.Email != null && person.Role != Role.Landowner)
            .OrderBy(person => person.DisplayName)
            .Select(person => new NamedPerson(person.Id, person.DisplayName)).ToListAsync(cancellation);
        Entry.PeopleOnSite ??= Planned.CrewSize;
        return Page();
    }
}

/// <summary>A person of the organization who can be written to.</summary>
public sealed record NamedPerson(Guid Id, string Name);

/// <summary>A watch as the page's form enters it.</summary>
public sealed class WatchEntry
{
    public int? PeopleOnSite { get; set; }
    public int? IntervalMinutes { get; set; } = WatchForm.UsualInterval;
    public int? GraceMinutes { get; set; } = WatchForm.UsualGrace;
    public int? EscalationMinutes { get; set; } = WatchForm.UsualEscalation;

    /// <summary>The crew is on the site already.</summary>
    public bool OnSite { get; set; }

    /// <summary>In order; rows that are left empty do not count.</summary>
    public List<ContactEntry> Contacts { get; set; } = [new(), new(), new()];

    internal WatchForm Form => new(
        PeopleOnSite, IntervalMinutes, GraceMinutes, EscalationMinutes,
        [.. Contacts.Where(contact => !contact.IsEmpty).Select(contact => contact.Form)], OnSite);
}

public sealed class ContactEntry
{
    public Guid? PersonId { get; set; }
    public string? Name { get; set; }
    public string? Email { get; set; }

    internal bool IsEmpty => PersonId is null && string.IsNullOrWhiteSpace(Name) && string.IsNullOrWhiteSpace(Email);

    internal ContactForm Form => new(PersonId, Name, Email);
}
