using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using NodaTime;
using WorkWindows.Engine.Practices;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Prescriptions;

/// <summary>A property's decades, and what brings most for an hour.</summary>
public sealed class PropertyPageModel(PropertyPlanReader reader, PrescriptionHandler prescriptions, Caller caller) : PageModel
{
    public PropertyPlan Plan { get; private set; } = null!;

    public bool MayPlan => caller.Role == Role.Consultant;

    /// <summary>Practices that may be prescribed; what follows in later years comes with them.</summary>
    public static IEnumerable<Practice> Practices => PracticeCatalogue.All;

    public async Task<IActionResult> OnGetAsync(Guid id, CancellationToken cancellation) =>
        await ShowAsync(id, cancellation) ? Page() : NotFound();

    public async Task<IActionResult> OnPostAsync(
        Guid id, Guid parcel, string? practice, decimal? quantity, string? unit, int? crewSize, CancellationToken cancellation)
    {
        if (!MayPlan)
            return Forbid();
        if (!ModelState.IsValid)
            return await ShowAsync(id, cancellation) ? Page() : NotFound();
        var change = await prescriptions.PrescribeAsync(
            parcel, new([new(practice, quantity, string.IsNullOrEmpty(unit) ? null : unit, crewSize)]), cancellation);
        if (change is { Outcome: ChangeOutcome.Done, Value.Count: > 0 })
            return LocalRedirect($"/properties/{id}");
        if (change.Outcome == ChangeOutcome.Done)
        {
            ModelState.AddModelError(
                "", $"{PracticeCatalogue.Find(practice!)!.Name} is planned on this parcel already, so nothing was added. Change that "
                + "task, or prescribe it again once it is done.");
        }
        foreach (var complaint in change.Complaints)
            ModelState.AddModelError("", complaint);
        return await ShowAsync(id, cancellation) ? Page() : NotFound();
    }

    /// <summary>As in 'done Thu 26 Nov 2026' or 'due 3 Mar 2028 to 3 Mar 2029'.</summary>
    public static string Says(Step step) => (step.State, step.From, step.To) switch
    {
        (StepState.Done, { } day, _) => $"done {DayWords.WithYear(day)}",
        (StepState.Due, { } from, { } to) when step.IsExpected => $"expected {Years(from, to)}, not planned",
        (StepState.Planned, { } from, var to) when step.IsExpected => $"planned, expected {Years(from, to ?? from)}",
        (StepState.Due, { } from, { } to) => $"due {DayWords.WithYear(from)} to {DayWords.WithYear(to)}, not planned",
        (_, { } from, { } to) when from == to => $"planned, {DayWords.WithYear(from)}",
        (_, { } from, { } to) => $"planned, {DayWords.WithYear(from)} to {DayWords.WithYear(to)}",
        (_, { } from, null) => $"planned, from {DayWords.WithYear(from)}",
        (_, null, { } to) => $"planned, by {DayWords.WithYear(to)}",
        _ => "planned, no date",
    };

    private static string Years(LocalDate from, LocalDate to) => from.Year == to.Year ? $"{from.Year}" : $"{from.Year} to {to.Year}";

    private async Task<bool> ShowAsync(Guid id, CancellationToken cancellation)
    {
        if (await reader.ReadAsync(id, cancellation) is not { } plan)
            return false;
        Plan = plan;
        return true;
    }
}
