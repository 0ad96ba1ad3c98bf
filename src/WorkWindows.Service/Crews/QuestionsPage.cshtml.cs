using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Crews;

/// <summary>Questions before the season, answered from past years.</summary>
[Authorize(Access.Plan)]
public sealed class QuestionsPageModel(SeasonQuestions questions, WorkWindowsDb db, WeekHandler week) : PageModel
{
    private const int LongestDays = 200;

    /// <summary>The first day, as the browser's date field sends it.</summary>
    [BindProperty(SupportsGet = true, Name = "from")]
    public string? From { get; set; }

    [BindProperty(SupportsGet = true, Name = "to")]
    public string? To { get; set; }

    [BindProperty(SupportsGet = true, Name = "leafOut")]
    public bool UntilLeafOut { get; set; }

    [BindProperty(SupportsGet = true, Name = "property")]
    public List<Guid> Properties { get; set; } = [];

    [BindProperty(SupportsGet = true, Name = "crew")]
    public Guid? Crew { get; set; }

    [BindProperty(SupportsGet = true, Name = "begins")]
    public string? Begins { get; set; }

    public LocalDate Today { get; private set; }

    public CrewDaysAnswer? CrewDays { get; private set; }

    public LaterCrewAnswer? LaterCrew { get; private set; }

    public bool IsAsked => From is not null;

    public IReadOnlyDictionary<Guid, string> Crews { get; private set; } = new Dictionary<Guid, string>();

    public IReadOnlyDictionary<Guid, string> Land { get; private set; } = new Dictionary<Guid, string>();

    public async Task OnGetAsync(CancellationToken cancellation)
    {
        Today = await week.TodayAsync(cancellation);
        Crews = await db.Crews.OrderBy(crew => crew.Name).ToDictionaryAsync(crew => crew.Id, crew => crew.Name, cancellation);
        Land = await db.Properties.OrderBy(row => row.Name).ToDictionaryAsync(row => row.Id, row => row.Name, cancellation);
        if (!IsAsked)
            return;
        var faults = new FieldFaults();
        var (from, to) = (CrewEntry.Date(From), CrewEntry.Date(To));
        if (from is null || from < Today)
            faults.Add("From", From, $"a day from {DayWords.WithYear(Today)} on");
        if (to is null || to < from || (from is { } first && to > first.PlusDays(LongestDays)))
            faults.Add("To", To, $"a day after the first, at most {LongestDays} days later");
        if (Crew is not null && CrewEntry.Date(Begins) is null)
            faults.Add("Begins", Begins, "the day on which the crew begins");
        foreach (var complaint in faults.Errors.Values.SelectMany(messages => messages))
            ModelState.AddModelError("", complaint);
        if (faults.Any)
            return;
        CrewDays = await questions.CrewDaysAsync(from!.Value, to!.Value, UntilLeafOut, Properties.ToHashSet(), cancellation);
        if (Crew is { } crew)
            LaterCrew = await questions.LaterCrewAsync(from.Value, to.Value, crew, CrewEntry.Date(Begins)!.Value, cancellation);
    }
}
