using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;
using NodaTime.Text;
using WorkWindows.Engine.Safety;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Safety.Checklists;

/// <summary>
/// A task's checklist for a day: to read, to print, and for the crew to acknowledge, without scripts too.
/// </summary>
public sealed class ChecklistModel(
    ChecklistReader checklists, SignatureHandler handler, Caller caller, WorkWindowsDb db) : PageModel
{
    public DayChecklist List { get; private set; } = null!;

    public TaskSummary Planned => List.Task;

    /// <summary>The rules that forbid working alone.</summary>
    public IReadOnlyList<RuleReason> Company { get; private set; } = [];

    public IReadOnlyList<SignatureView> Signatures { get; private set; } = [];

    /// <summary>What has changed since the reader was shown the list that they wanted to sign.</summary>
    public IReadOnlyList<ChecklistChange> Changes { get; private set; } = [];

    /// <summary>The reader may acknowledge: somebody who works, by name.</summary>
    public bool IsOfTheCrew => caller is { Role: not Role.Landowner, PersonId: not null };

    public bool MaySign => IsOfTheCrew && List.MayBeSigned
        && List.Release is { IsReleased: true } or { AwaitsSignature: true };

    /// <summary>
    /// The reader may release the work in place of the crew lead, whose name this is; null otherwise.
    /// </summary>
    public string? InsteadOf => List.MayBeReleasedInstead(caller) ? List.LeadName : null;

    public Guid? PersonId => caller.PersonId;

    /// <summary>The reader's own name.</summary>
    public string PersonName { get; private set; } = "";

    public string IsoDay => LocalDatePattern.Iso.Format(List.Day);

    /// <summary>The signature as the form enters it.</summary>
    [BindProperty]
    public SignatureEntry Entry { get; set; } = new();

    public static string Heading(SafetyItemKind kind) => kind switch
    {
        SafetyItemKind.Today => "On this day",
        SafetyItemKind.Wear => "Wear",
        SafetyItemKind.Carry => "Carry",
        SafetyItemKind.Do => "Do",
        SafetyItemKind.Stop => "Stop and leave",
    };

    public Task<IActionResult> OnGetAsync(Guid id, string? date, CancellationToken cancellation) =>
        ShowAsync(id, date, cancellation);

    public async Task<IActionResult> OnPostAsync(Guid id, string? date, CancellationToken cancellation)
    {
        if (!IsOfTheCrew)
            return Forbid();
        if (await FindAsync(id, date, cancellation) is not { } list)
            return NotFound();
        var shown = Entry.Shown;
        Changes = ChecklistDifference.Of(shown, list.Checklist);
        var signed = await handler.SignAsync(id, list.Day, Entry.Form(caller.PersonId), cancellation);
        if (signed.Outcome == ChangeOutcome.Done)
            return LocalRedirect($"/tasks/{id}/checklist?date={LocalDatePattern.Iso.Format(list.Day)}");
        foreach (var complaint in signed.Complaints)
            ModelState.AddModelError("", complaint);
        db.ChangeTracker.Clear();
        return await ShowAsync(id, date, cancellation);
    }

    /// <summary>Whether the reader had ticked the line, and it still says what they read.</summary>
    public bool IsTicked(SafetyItem item) =>
        Entry.Items.Any(line => line.Done && line.Id == item.Id && line.Text == item.Statement);

    private Task<DayChecklist?> FindAsync(Guid id, string? date, CancellationToken cancellation) =>
        checklists.ReadAsync(
            id, LocalDatePattern.Iso.Parse(date ?? "") is { Success: true, Value: var day } ? day : null,
            cancellation);

    private async Task<IActionResult> ShowAsync(Guid id, string? date, CancellationToken cancellation)
    {
        if (await FindAsync(id, date, cancellation) is not { } list)
            return NotFound();
        List = list;
        Company = [.. CompanyRules.Of(list.Explanation).Select(verdict => RuleReason.Of(verdict, list.Day))];
        if (IsOfTheCrew)
        {
            Signatures = (await checklists.SignaturesAsync(id, list.Day, cancellation)).ConvertAll(SignatureView.Of);
            PersonName = await db.People.Where(person => person.Id == caller.PersonId)
                .Select(person => person.DisplayName).SingleAsync(cancellation);
        }
        return Page();
    }
}

/// <summary>A signature as the page's form enters it.</summary>
public sealed class SignatureEntry
{
    /// <summary>Made with the page, so that a form that is sent twice is stored once.</summary>
    public Guid Key { get; set; } = Guid.NewGuid();

    public string? Version { get; set; }
    public string? Name { get; set; }
    public string? InsteadBecause { get; set; }
    public List<LineEntry> Items { get; set; } = [];

    internal IEnumerable<AcknowledgedItem> Shown => Items.Select(line => new AcknowledgedItem(line.Id, line.Text));

    internal SignatureForm Form(Guid? person) => new(
        Key, person, Version,
        [.. Items.Where(line => line.Done).Select(line => new AcknowledgedItem(line.Id, line.Text))], Name,
        SignedAt: null, InsteadBecause);
}

/// <summary>A line as it was shown, and whether it was ticked.</summary>
public sealed class LineEntry
{
    public string? Id { get; set; }
    public string? Text { get; set; }
    public bool Done { get; set; }
}
