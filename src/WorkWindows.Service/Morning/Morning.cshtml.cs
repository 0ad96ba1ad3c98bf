using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Morning;

/// <summary>What a consultant looks at first: what may be done, what changed, what ends soon, what waits.</summary>
[Authorize(Access.Plan)]
public sealed class MorningModel(OutlookReader outlooks, WaitingReader waiting, WeekHandler week, IClock clock) : PageModel
{
    /// <summary>How much of each list is shown; the rest is on the page of all tasks.</summary>
    public const int Most = 12;

    /// <summary>Properties with work today that are shown, and tasks of each.</summary>
    public const int MostProperties = 20, MostTasks = 5;

    private IReadOnlyDictionary<Guid, List<string>> why = new Dictionary<Guid, List<string>>();

    public MorningView View { get; private set; } = null!;

    public IReadOnlyList<Waiting> Waiting { get; private set; } = [];

    public Instant Now { get; } = clock.GetCurrentInstant();

    public async Task OnGetAsync(CancellationToken cancellation)
    {
        var today = await week.TodayAsync(cancellation);
        View = MorningView.Of(await outlooks.ReadAsync(cancellation), today, Now);
        Waiting = await waiting.ReadAsync(today, cancellation);
        why = await outlooks.WhyAsync(
        [
            .. View.Changed.Take(Most).Select(change => change.Task.Id),
            .. View.Properties.Take(MostProperties).SelectMany(property => property.Tasks.Take(MostTasks)).Select(task => task.Id),
        ], cancellation);
    }

    /// <summary>Why a day of a task is as it is, in a few words; empty where nothing stands against it.</summary>
    public string Why(OutlookRow task, LocalDate day) =>
        task.FirstDay is { } first && why.GetValueOrDefault(task.Id) is { } words
        && Period.DaysBetween(first, day) is var index && index >= 0 && index < words.Count
            ? words[index]
            : "";

    public IReadOnlyList<DayCell> Cells(OutlookRow task) =>
    [
        .. View.Days.Select(count => new DayCell(
            count.Day, task.On(count.Day, Now), count.Day == task.ScheduledOn, count.Day == View.Today,
            count.Day == View.Today, false, DayWords.AddressOf(task.Id, count.Day))),
    ];

    /// <summary>As in Thu 26 Nov to Sat 28 Nov.</summary>
    public static string Days(Overnight change) => change.First == change.Last
        ? DayWords.Of(change.First)
        : $"{DayWords.Of(change.First)} to {DayWords.Of(change.Last)}";
}
