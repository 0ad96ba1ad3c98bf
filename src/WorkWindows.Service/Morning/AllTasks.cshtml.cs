using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Imports;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Morning;

/// <summary>Which of all tasks are listed, and in which order; what is null leaves nothing out.</summary>
/// <param name="Property">The property.</param>
/// <param name="Owner">The landowner's name.</param>
/// <param name="County">The county's FIPS code.</param>
/// <param name="Practice">A key of the practice catalogue.</param>
/// <param name="State">workable, open, limited, unknown or closed on the day.</param>
/// <param name="ClosesBy">Its last day, whatever ends it, is this one or earlier: ISO; what is no day leaves nothing out.</param>
/// <param name="Sort">place, owner, county, practice or closing.</param>
public sealed record TaskFilter(Guid? Property, string? Owner, string? County, string? Practice, string? State, string? ClosesBy, string? Sort)
{
    public static readonly IReadOnlyList<(string Key, string Label)> Orders =
    [
        ("place", "Property"), ("owner", "Owner"), ("county", "County"), ("practice", "Practice"), ("closing", "Last day"),
    ];

    public static readonly IReadOnlyList<string> States = ["workable", "open", "limited", "unknown", "closed"];

    /// <returns>The rows that are meant, in order; rows come by place.</returns>
    public IReadOnlyList<OutlookRow> Of(IEnumerable<OutlookRow> rows, LocalDate day, Instant now)
    {
        var closesBy = LocalDatePattern.Iso.Parse(ClosesBy ?? "") is { Success: true, Value: var last } ? last : (LocalDate?)null;
        var meant = rows.Where(row => (Property is null || row.PropertyId == Property)
            && (string.IsNullOrEmpty(Owner) || row.Owner == Owner)
            && (string.IsNullOrEmpty(County) || row.CountyFips == County)
            && (string.IsNullOrEmpty(Practice) || row.PracticeId == Practice)
            && (closesBy is null || row.ClosesOn <= closesBy)
            && (string.IsNullOrEmpty(State) || Is(row, day, now)));
        return
        [
            .. Sort switch
            {
                "owner" => meant.OrderBy(row => row.Owner is null).ThenBy(row => row.Owner, StringComparer.OrdinalIgnoreCase),
                "county" => meant.OrderBy(row => row.State, StringComparer.Ordinal).ThenBy(row => row.CountyFips, StringComparer.Ordinal),
                "practice" => meant.OrderBy(row => row.Practice, StringComparer.Ordinal),
                "closing" => meant.OrderBy(row => row.ClosesOn ?? LocalDate.MaxIsoValue),
                _ => meant,
            },
        ];
    }

    private bool Is(OutlookRow row, LocalDate day, Instant now) => State == "workable"
        ? row.MayBeDone(day, now)
        : row.IsDue(day) && Wording.Of(row.On(day, now)) == State;
}

/// <summary>All tasks that are to be done: to find, to sort, and to change several at once.</summary>
[Authorize(Access.Plan)]
public sealed class AllTasksModel(OutlookReader outlooks, TaskBulkHandler bulk, WeekHandler week, IClock clock) : PageModel
{
    public const int PageSize = 50;

    [BindProperty(SupportsGet = true)]
    public TaskFilter Filter { get; set; } = new(null, null, null, null, null, null, null);

    /// <summary>The day whose state is meant, ISO; today where it is none of the coming days.</summary>
    [BindProperty(SupportsGet = true, Name = "day")]
    public string? DayText { get; set; }

    [BindProperty(SupportsGet = true, Name = "at")]
    public int At { get; set; } = 1;

    /// <summary>The tasks that are to be changed.</summary>
    [BindProperty]
    public IReadOnlyList<Guid> Ids { get; set; } = [];

    [BindProperty]
    public BulkChange Bulk { get; set; } = new(null, null, null, null, null);

    public LocalDate Today { get; private set; }

    public LocalDate Day { get; private set; }

    public Instant Now { get; } = clock.GetCurrentInstant();

    public IReadOnlyList<OutlookRow> All { get; private set; } = [];

    public IReadOnlyList<OutlookRow> Meant { get; private set; } = [];

    public IEnumerable<OutlookRow> Shown => Meant.Skip((At - 1) * PageSize).Take(PageSize);

    public int Pages => Math.Max(1, (Meant.Count + PageSize - 1) / PageSize);

    /// <summary>What would change, or has; null while nothing was asked.</summary>
    public IReadOnlyList<RowChange>? Changes { get; private set; }

    public bool IsStored { get; private set; }

    public IReadOnlyList<string> Complaints { get; private set; } = [];

    public Task OnGetAsync(CancellationToken cancellation) => ShowAsync(cancellation);

    public async Task OnPostAsync(CancellationToken cancellation)
    {
        var asked = ModelState.IsValid
            ? await bulk.ChangeAsync([.. Ids.Distinct()], Bulk, isPreview: !Request.Form.ContainsKey("store"), cancellation)
            : null;
        Complaints = asked?.Complaints
            ?? [.. ModelState.Values.SelectMany(value => value.Errors).Select(error => error.ErrorMessage)];
        Changes = asked?.Value;
        IsStored = Changes is not null && Request.Form.ContainsKey("store");
        await ShowAsync(cancellation);
    }

    public IReadOnlyList<DayCell> Cells(OutlookRow task) =>
    [
        .. Enumerable.Range(0, TaskOutlook.Days).Select(Today.PlusDays).Select(day => new DayCell(
            day, task.On(day, Now), day == task.ScheduledOn, day == Today, day == Day, day == Day && day != Today,
            DayWords.AddressOf(task.Id, day))),
    ];

    /// <summary>The address of the same list, otherwise ordered or on another page.</summary>
    public string AddressOf(string? sort, int at) => $"/tasks{QueryString.Create(new Dictionary<string, string?>
    {
        ["property"] = Filter.Property is { } property ? $"{property}" : null,
        ["owner"] = Filter.Owner,
        ["county"] = Filter.County,
        ["practice"] = Filter.Practice,
        ["state"] = Filter.State,
        ["closesBy"] = Filter.ClosesBy,
        ["day"] = DayText,
        ["sort"] = sort,
        ["at"] = at > 1 ? $"{at}" : null,
    }.Where(one => !string.IsNullOrEmpty(one.Value)))}";

    private async Task ShowAsync(CancellationToken cancellation)
    {
        Today = await week.TodayAsync(cancellation);
        Day = AskedDays.Coming(DayText, Today);
        All = await outlooks.ReadAsync(cancellation);
        Meant = Filter.Of(All, Day, Now);
        At = Math.Clamp(At, 1, Pages);
    }
}
