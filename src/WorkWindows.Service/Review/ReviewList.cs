using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Review;

/// <param name="Property">The one property, or null for all.</param>
/// <param name="Days">The days.</param>
/// <param name="Rule">The one rule that decided, or null for any.</param>
/// <param name="State">The one state, or null for any.</param>
/// <param name="Person">The owner, or who was booked or led the work; null for anybody.</param>
/// <param name="Page">From 1.</param>
public sealed record ReviewFilter(
    Guid? Property, DaySpan Days, string? Rule, DayState? State, Guid? Person, int Page);

/// <summary>Lists what was decided about days, the latest day first.</summary>
public sealed class ReviewList(WorkWindowsDb db, VisibleTasks visible, PackShelf shelf, Caller caller)
{
    public const int PageSize = 50;

    /// <summary>
    /// The days of more tasks are not read at once: a decision holds a year in bytes, and thousands of them take longer than
    /// anybody waits.
    /// </summary>
    public const int MostTasks = 1_000;

    public async Task<ReviewListView> ReadAsync(ReviewFilter filter, CancellationToken cancellation)
    {
        var tasks = await ReviewedTask.Of(visible.All).ToDictionaryAsync(task => task.Id, cancellation);
        var asked = tasks.Values.Where(task => filter.Property is null || task.PropertyId == filter.Property).ToList();
        var isTooMuch = asked.Count > MostTasks;
        var rows = isTooMuch ? [] : await DecidedDays.ReadAsync(db, asked, filter.Days, cancellation);
        var people = caller.Role == Role.Consultant ? await PeopleAsync(cancellation) : [];
        if (filter.Person is { } person && people.ContainsKey(person))
        {
            var booked = await BookedAsync(person, filter.Days, cancellation);
            rows = rows.FindAll(row =>
                tasks[row.TaskId] is var task && (task.LandownerId == person || task.CrewLeadId == person)
                || booked.Contains((row.TaskId, row.Day)));
        }

        var titles = (await shelf.ReadAsync(cancellation)).OfAny(tasks.Values.Select(task => task.PropertyId).Distinct())
            .SelectMany(pack => pack.Rules).DistinctBy(rule => rule.Id).ToDictionary(rule => rule.Id, rule => rule.Title);
        var rules = rows.SelectMany(row => row.Rules).Distinct()
            .Select(id => new ReviewChoice(id, titles.GetValueOrDefault(id, id)))
            .OrderBy(choice => choice.Text, StringComparer.Ordinal).ToList();
        var shown = rows.FindAll(row => (filter.Rule is null || row.Rules.Contains(filter.Rule))
            && (filter.State is null || row.DayState == filter.State));
        var pages = Math.Max(1, (shown.Count + PageSize - 1) / PageSize);
        var page = Math.Clamp(filter.Page, 1, pages);
        return new(
            [
                .. shown.Skip((page - 1) * PageSize).Take(PageSize).Select(row =>
                {
                    var task = tasks[row.TaskId];
                    return new ReviewedDay(
                        row.TaskId, row.Day, task.Title, task.Property, row.DayState,
                        [.. row.Rules.Distinct().Select(id => titles.GetValueOrDefault(id, id))]);
                }),
            ],
            shown.Count, page, pages, CostsOf(shown, titles), rules,
            [
                .. tasks.Values.Select(task => new ReviewChoice($"{task.PropertyId}", task.Property)).Distinct()
                    .OrderBy(choice => choice.Text, StringComparer.Ordinal),
            ],
            [.. people.Select(one => new ReviewChoice($"{one.Key}", one.Value))])
        {
            TooMany = isTooMuch ? asked.Count : null,
        };
    }

    /// <summary>How many days each rule closed, the most first.</summary>
    private static List<RuleCost> CostsOf(IEnumerable<DecidedDay> rows, Dictionary<string, string> titles) =>
    [
        .. rows.Where(row => row.DayState == DayState.Closed)
            .SelectMany(row => row.Rules.Distinct(), (row, rule) => (Rule: rule, Alone: row.Rules.Distinct().Count() == 1))
            .GroupBy(one => one.Rule)
            .Select(same => new RuleCost(
                same.Key, titles.GetValueOrDefault(same.Key, same.Key), same.Count(), same.Count(one => one.Alone)))
            .OrderByDescending(cost => cost.Days).ThenBy(cost => cost.Title, StringComparer.Ordinal),
    ];

    private async Task<Dictionary<Guid, string>> PeopleAsync(CancellationToken cancellation) =>
        await db.People.AsNoTracking().OrderBy(person => person.DisplayName)
            .ToDictionaryAsync(person => person.Id, person => person.DisplayName, cancellation);

    private async Task<HashSet<(Guid Task, LocalDate Day)>> BookedAsync(
        Guid person, DaySpan days, CancellationToken cancellation) =>
    [
        .. (await db.Bookings.AsNoTracking()
            .Where(booking => booking.Day >= days.First && booking.Day <= days.Last
                && (booking.Crew.LeadId == person || booking.People.Any(one => one.PersonId == person)))
            .Select(booking => new { booking.TaskId, booking.Day }).ToListAsync(cancellation))
            .Select(booking => (booking.TaskId, booking.Day)),
    ];
}

/// <param name="Days">The days of the page.</param>
/// <param name="Count">How many there are on all pages.</param>
/// <param name="Page">The page, from 1.</param>
/// <param name="Pages">How many pages there are.</param>
/// <param name="Costs">The rules that closed days.</param>
/// <param name="Rules">The rules to choose from.</param>
/// <param name="Properties">The properties to choose from.</param>
/// <param name="People">The people to choose from; none for who may not ask.</param>
public sealed record ReviewListView(
    IReadOnlyList<ReviewedDay> Days, int Count, int Page, int Pages, IReadOnlyList<RuleCost> Costs,
    IReadOnlyList<ReviewChoice> Rules, IReadOnlyList<ReviewChoice> Properties, IReadOnlyList<ReviewChoice> People)
{
    /// <summary>How many tasks were asked for, where they are too many to be read at once; null where they are not.</summary>
    public int? TooMany { get; init; }
}

public sealed record ReviewedDay(
    Guid TaskId, LocalDate Day, string Task, string Property, DayState State, IReadOnlyList<string> Rules);

/// <param name="Id">The rule.</param>
/// <param name="Title">What it says.</param>
/// <param name="Days">Days of tasks that it closed.</param>
/// <param name="Alone">Those of them that no other rule closed.</param>
public sealed record RuleCost(string Id, string Title, int Days, int Alone);

public sealed record ReviewChoice(string Value, string Text);
