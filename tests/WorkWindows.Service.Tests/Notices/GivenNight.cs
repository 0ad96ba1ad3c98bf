using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Tests.Notices;

/// <summary>Hand-built nights: hinge cutting in Michigan in February, judged by the shipped rule packs.</summary>
internal static class GivenNight
{
    /// <summary>A Monday.</summary>
    public static readonly LocalDate Today = new(2026, 2, 2);

    /// <summary>Four in the morning in Detroit.</summary>
    public static readonly Instant Now = Instant.FromUtc(2026, 2, 2, 9, 0);

    public static readonly Recipient Owner = new(
        new("00000000-0000-7000-8000-00000000000a"), "Nell Ashby", "nell@example.org");
    public static readonly Recipient Lead = new(
        new("00000000-0000-7000-8000-00000000000b"), "Tom Vance", "tom@example.org");
    public static readonly Guid TaskId = new("00000000-0000-7000-8000-000000000001");

    private const int DaysBefore = 5;
    private const int DaysAfter = 365;
    private static readonly DateTimeZone Detroit = DateTimeZoneProviders.Tzdb["America/Detroit"];

    private static readonly SignalKind[] Alerts =
    [
        SignalKind.RedFlagAlert, SignalKind.WindAlert, SignalKind.WinterStormAlert, SignalKind.ThunderstormAlert,
    ];

    /// <summary>A task whose days from today on are as the letters say; past them no wind is known.</summary>
    /// <param name="days">o open, l limited by the wind, c closed by gusts, u unknown for want of gusts.</param>
    /// <param name="change">What differs from a hinge cut of three acres with an owner and a crew lead.</param>
    /// <param name="today">The first of the days.</param>
    public static TaskTonight Work(string days, Func<TaskSummary, TaskSummary>? change = null, LocalDate? today = null)
    {
        var first = today ?? Today;
        var summary = new TaskSummary(
            TaskId, "T-1", PracticeCatalogue.Find("hinge-cut")!, Guid.Empty, "North Forty", Guid.Empty, "Cedar Hollow",
            Detroit, Owner.Id, Lead.Id, 2, 3m, "acres", Deadline: null, ScheduledOn: null, CompletedOn: null);
        summary = change?.Invoke(summary) ?? summary;
        var facts = new TaskFacts(summary.Id.ToString(), summary.Practice, "MI", "26065", [SpeciesGroup.Maple], []);
        var evaluation = new PointRules(ShippedPacks.Read(), Signals(days, first)).Evaluate(facts);
        return new(summary, evaluation, first);
    }

    public static Night Of(params TaskTonight[] tasks) => new(
        Now, tasks.Select(task => task.Today).FirstOrDefault(Today),
        new("Quiet Ridge Consulting", "1 Mill Road, Larkspur, MI 48800"), tasks, [],
        new[] { Owner, Lead }.ToDictionary(person => person.Id), new HashSet<string>());

    /// <summary>A window that someone was told of, in days after today.</summary>
    public static Announcement Told(int first, int last, Recipient? person = null) => new()
    {
        TaskId = TaskId,
        PersonId = (person ?? Owner).Id,
        FirstDay = Today.PlusDays(first),
        LastDay = Today.PlusDays(last),
        AnnouncedAt = Now - Duration.FromDays(1),
    };

    /// <summary>Announced runs in days after today, such as '0-2 4-4'.</summary>
    public static string Runs(IEnumerable<Announcement> windows) => string.Join(" ", windows.Select(window =>
        $"{Period.DaysBetween(Today, window.FirstDay)}-{Period.DaysBetween(Today, window.LastDay)}"));

    private static SignalSet Signals(string days, LocalDate today)
    {
        var span = new DaySpan(today.PlusDays(-DaysBefore), DaysBefore + DaysAfter);
        var states = new string('o', DaysBefore) + days + new string('u', DaysAfter - days.Length);
        Signal[] signals =
        [
            Signal(SignalKind.MinTemperatureC, span, states, _ => -3),
            Signal(SignalKind.MaxTemperatureC, span, states, _ => 1),
            Signal(SignalKind.WindMps, span, states, state => state == 'l' ? 6.5 : 2),
            Signal(SignalKind.GustMps, span, states, state => state switch { 'c' => 13, 'u' => double.NaN, _ => 4 }),
            Signal(SignalKind.PrecipitationMm, span, states, _ => 0),
            .. Alerts.Select(kind => Signal(kind, span, states, _ => 0, Basis.Alert)),
            Signal(SignalKind.DarkShiftMinutes, span, states, _ => 0, Basis.Calendar),
            Signal(SignalKind.LightShiftMinutes, span, states, _ => 540, Basis.Calendar),
        ];
        var leafOut = new SeasonEvent(SeasonEventKind.LeafOut, new(2026, 4, 28), Basis.Climatology, 30);
        return SignalSet.Of("test", span, signals, [leafOut], Now - Duration.FromMinutes(50));
    }

    private static Signal Signal(
        SignalKind kind, DaySpan span, string states, Func<char, double> value, Basis basis = Basis.Forecast)
    {
        var values = states.Select(value).ToArray();
        return new(kind, span, [.. values], [.. values.Select(one => double.IsNaN(one) ? Basis.Missing : basis)]);
    }
}
