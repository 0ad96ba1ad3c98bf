using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Rules;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Windows;

public sealed class SeasonModel(
    WindowHandler windows, VisibleTasks tasks, ParcelWeather weather, SiteNotes notes, OverrideHandler overrides,
    IAuthorizationService access, Caller caller, WorkWindowsDb db, IClock clock) : PageModel
{
    private const int DecisionsShown = 10;

    /// <summary>Before the oldest records of stations.</summary>
    private const int EarliestYear = 1800;

    [BindProperty(SupportsGet = true, Name = "year")]
    public int? Year { get; set; }

    public LocalDate Today { get; private set; }

    public Instant Now { get; } = clock.GetCurrentInstant();

    public SeasonView View { get; private set; } = null!;

    public IReadOnlyList<StationLine> Stations { get; private set; } = [];

    /// <summary>The years that the parcel's stations have readings of, the latest first.</summary>
    public IReadOnlyList<int> Years { get; private set; } = [];

    public IReadOnlyList<DecisionLine> Decisions { get; private set; } = [];

    /// <summary>The exceptions and readings that count today or later.</summary>
    public SiteNotes.Notes Notes { get; private set; } = new([], []);

    public bool MaySign { get; private set; }

    public async Task<IActionResult> OnGetAsync(Guid id, CancellationToken cancellation)
    {
        if (await windows.TodayAsync(id, cancellation) is not { } today)
            return NotFound();
        Today = today;
        if (Year < EarliestYear || Year > today.Year)
            return NotFound();
        var days = SeasonView.DaysOf(Year, Today);
        if (await windows.ReadAsync(id, days, cancellation) is not { } input)
            return NotFound();
        Stations = await weather.SourcesAsync(input.Parcel, input.Source, cancellation);
        var first = Stations.Min(station => station.FirstReading)?.Year ?? Today.Year;
        Years = [.. Enumerable.Range(first, Today.Year - first + 1).Reverse()];
        if (Year is { } year && !Years.Contains(year))
            return NotFound();
        View = SeasonView.Of(input, days, Today);
        Notes = await notes.ReadAsync(View.Task, input.Weather.Rules.Packs, Today, cancellation);
        MaySign = (await access.AuthorizeAsync(User, Access.Sign)).Succeeded;
        Decisions = await DecisionsAsync(id, View.Task.Zone, cancellation);
        return Page();
    }

    public async Task<IActionResult> OnPostWithdrawAsync(
        Guid id, Guid exception, CancellationToken cancellation)
    {
        if (!(await access.AuthorizeAsync(User, Access.Sign)).Succeeded)
            return Forbid();
        var property = await tasks.All.Where(task => task.Id == id).Select(task => task.Parcel.PropertyId)
            .SingleOrDefaultAsync(cancellation);
        var withdrawn = await overrides.WithdrawAsync(property, exception, caller.PersonId!.Value, cancellation);
        return withdrawn.Outcome == ChangeOutcome.Done ? LocalRedirect($"/tasks/{id}") : NotFound();
    }

    private async Task<IReadOnlyList<DecisionLine>> DecisionsAsync(
        Guid id, DateTimeZone zone, CancellationToken cancellation)
    {
        var rows = await db.Decisions.AsNoTracking().Where(decision => decision.TaskId == id)
            .OrderByDescending(decision => decision.EvaluatedAt).Take(DecisionsShown)
            .Select(decision => new { decision.EvaluatedAt, decision.FirstDay, decision.LastDay, decision.Hash })
            .ToListAsync(cancellation);
        return [.. rows.Select(row =>
            new DecisionLine(row.EvaluatedAt.InZone(zone).LocalDateTime, row.FirstDay, row.LastDay, row.Hash[..12]))];
    }
}

/// <summary>A stored decision as the page lists it.</summary>
public sealed record DecisionLine(LocalDateTime EvaluatedAt, LocalDate FirstDay, LocalDate LastDay, string ShortHash);
