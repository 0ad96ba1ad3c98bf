using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices.Certificates;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Crews;

/// <summary>Where a consultant says who works together, with what, and when they are off.</summary>
[Authorize(Access.Plan)]
public sealed class CrewsPageModel(
    WorkWindowsDb db, CrewHandler crews, EquipmentHandler equipment, AbsenceHandler absences,
    CertificateHandler certificates, CrewCalendar calendar, WeekHandler week, TaskHours hours) : PageModel
{
    public CrewsView View { get; private set; } = null!;

    /// <summary>The crew whose form is open; null for a new one.</summary>
    [BindProperty(SupportsGet = true, Name = "crew")]
    public Guid? Edited { get; set; }

    [BindProperty]
    public CrewEntry Entry { get; set; } = new();

    public LocalDate Today { get; private set; }

    /// <summary>What the crews' records say of their pace.</summary>
    public Paces Paces { get; private set; } = null!;

    /// <summary>The address of a crew's new calendar; shown once.</summary>
    public string? CalendarAddress { get; private set; }

    public async Task OnGetAsync(CancellationToken cancellation)
    {
        await ShowAsync(cancellation);
        if (View.Crews.FirstOrDefault(card => card.Crew.Id == Edited) is { } card)
            Entry = CrewEntry.Of(card.Crew);
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellation) =>
        await EndAsync(await crews.SaveAsync(Edited, Entry.Form(), cancellation), cancellation);

    public async Task<IActionResult> OnPostDeleteAsync(Guid id, CancellationToken cancellation) =>
        await EndAsync(await crews.DeleteAsync(id, cancellation), cancellation);

    public async Task<IActionResult> OnPostEquipmentAsync(
        string? name, string? kind, Guid? only, CancellationToken cancellation) =>
        await EndAsync(await equipment.SaveAsync(null, new(name, kind, only), cancellation), cancellation);

    public async Task<IActionResult> OnPostDeleteEquipmentAsync(Guid id, CancellationToken cancellation) =>
        await EndAsync(await equipment.DeleteAsync(id, cancellation), cancellation);

    /// <param name="of">'person', 'crew' or 'equipment' and an id.</param>
    /// <param name="firstDay">The first day, as the browser's date field sends it.</param>
    /// <param name="lastDay">The last, or nothing for one day.</param>
    /// <param name="reason">Why, or nothing.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<IActionResult> OnPostAbsenceAsync(
        string? of, string? firstDay, string? lastDay, string? reason, CancellationToken cancellation)
    {
        Guid? Id(string kind) => of?.Split(':') is [var given, var id] && given == kind && Guid.TryParse(id, out var parsed)
            ? parsed
            : null;
        var form = new AbsenceForm(
            Id("person"), Id("crew"), Id("equipment"), CrewEntry.Date(firstDay), CrewEntry.Date(lastDay), reason);
        return await EndAsync(await absences.AddAsync(form, cancellation), cancellation);
    }

    public async Task<IActionResult> OnPostDeleteAbsenceAsync(Guid id, CancellationToken cancellation) =>
        await EndAsync(await absences.DeleteAsync(id, cancellation), cancellation);

    /// <summary>Adds a certificate, or renews the one of the same title.</summary>
    public async Task<IActionResult> OnPostCertificateAsync(
        Guid holder, string? title, string? validUntil, CancellationToken cancellation)
    {
        var others = (await certificates.ReadAsync(holder, cancellation))?.Where(one => one.Title != title?.Trim()) ?? [];
        return await EndAsync(
            await certificates.SaveAsync(holder, [.. others, new(title, CrewEntry.Date(validUntil))], cancellation), cancellation);
    }

    public async Task<IActionResult> OnPostDeleteCertificateAsync(Guid id, string title, CancellationToken cancellation)
    {
        var others = (await certificates.ReadAsync(id, cancellation))?.Where(one => one.Title != title) ?? [];
        return await EndAsync(await certificates.SaveAsync(id, [.. others], cancellation), cancellation);
    }

    public async Task<IActionResult> OnPostCalendarAsync(Guid id, CancellationToken cancellation)
    {
        CalendarAddress = await calendar.NewAddressAsync(id, Request, cancellation);
        await ShowAsync(cancellation);
        return CalendarAddress is null ? NotFound() : Page();
    }

    private async Task<IActionResult> EndAsync<T>(Change<T> change, CancellationToken cancellation)
    {
        if (change.Outcome == ChangeOutcome.Done)
            return RedirectToPage(new { crew = (Guid?)null });
        foreach (var complaint in change.Complaints)
            ModelState.AddModelError("", complaint);
        await ShowAsync(cancellation);
        return Page();
    }

    private async Task ShowAsync(CancellationToken cancellation)
    {
        Today = await week.TodayAsync(cancellation);
        View = await CrewsView.ReadAsync(db, Today, cancellation);
        Paces = await hours.PacesAsync(cancellation);
    }
}

/// <summary>A crew as the page's form enters it.</summary>
public sealed class CrewEntry
{
    public string? Name { get; set; }
    public Guid? LeadId { get; set; }
    public List<Guid> MemberIds { get; set; } = [];
    public decimal? HoursPerDay { get; set; }
    public double? BaseLatitude { get; set; }
    public double? BaseLongitude { get; set; }
    public string? FirstDay { get; set; }
    public string? LastDay { get; set; }

    internal static CrewEntry Of(Crew crew) => new()
    {
        Name = crew.Name,
        LeadId = crew.LeadId,
        MemberIds = [.. crew.Members.Select(member => member.PersonId)],
        HoursPerDay = crew.HoursPerDay,
        BaseLatitude = crew.BaseLatitude,
        BaseLongitude = crew.BaseLongitude,
        FirstDay = crew.FirstDay is { } first ? $"{first:R}" : null,
        LastDay = crew.LastDay is { } last ? $"{last:R}" : null,
    };

    internal CrewForm Form() => new(
        Name, LeadId, MemberIds, HoursPerDay, BaseLatitude, BaseLongitude, Date(FirstDay), Date(LastDay));

    /// <returns>The day of a browser's date field; null where nothing was entered.</returns>
    internal static LocalDate? Date(string? text) =>
        LocalDatePattern.Iso.Parse(text?.Trim() ?? "") is { Success: true, Value: var day } ? day : null;
}
