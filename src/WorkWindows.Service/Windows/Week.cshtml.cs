using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Safety.Checklists;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Windows;

public sealed class WeekModel(
    TaskEvaluator evaluator, VisibleTasks tasks, WeekHandler week, ParcelWeather weather, ChecklistReader checklists,
    MessageReader messages, Caller caller, IClock clock)
    : PageModel
{
    [BindProperty(SupportsGet = true, Name = "property")]
    public Guid? Property { get; set; }

    [BindProperty(SupportsGet = true, Name = "practice")]
    public string? Practice { get; set; }

    [BindProperty(SupportsGet = true, Name = "today")]
    public bool WorkableToday { get; set; }

    public WeekFilter Filter => new(Property, Practice, WorkableToday);

    public WeekView View { get; private set; } = null!;

    /// <summary>How old what is known of the weather is, by property; none where there is no station.</summary>
    public IReadOnlyDictionary<Guid, WeatherAge> Ages { get; private set; } = new Dictionary<Guid, WeatherAge>();

    /// <summary>Whether tasks that are workable today are released; none for a reader who does not work there.</summary>
    public IReadOnlyDictionary<Guid, Release> Releases { get; private set; } = new Dictionary<Guid, Release>();

    public Instant Now { get; } = clock.GetCurrentInstant();

    public LocalDate Today { get; private set; }

    /// <summary>Whose signatures a phone may still keep; null for a reader who signs nothing.</summary>
    public Guid? Signer => caller.Role == Role.Landowner ? null : caller.PersonId;

    public bool IsConsultant => caller.Role == Role.Consultant;

    /// <summary>How many messages reached nobody and wait for a consultant.</summary>
    public int Undelivered { get; private set; }

    public async Task OnGetAsync(CancellationToken cancellation)
    {
        Today = await week.TodayAsync(cancellation);
        var pending = tasks.All.Where(task => task.CompletedOn == null);
        var evaluated = await evaluator.EvaluateAsync(pending, WeekView.Horizon(Today), cancellation);
        View = WeekView.Of(evaluated, Today, Filter);
        if (caller.Role != Role.Landowner)
            Releases = await checklists.ReleasesAsync(evaluated, Today, cancellation);
        Ages = await weather.AgesAsync([.. View.Properties.Select(property => property.Id)], cancellation);
        if (IsConsultant)
            Undelivered = await messages.CountAsync(MessageState.GivenUp, cancellation);
    }
}
