using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Service.Windows;

/// <summary>The reasons of one day, as its page shows them.</summary>
/// <param name="Task">The task.</param>
/// <param name="Day">The day.</param>
/// <param name="Statement">The day's state.</param>
/// <param name="Deciding">The rules that made the state.</param>
/// <param name="AlsoSpoke">
/// The other rules that hold, may hold or are lifted: limits, then what is required, then favours.
/// </param>
/// <param name="Changes">Single inputs that would give the day another state.</param>
/// <param name="Quiet">The rules that were checked and do not hold, a line each.</param>
/// <param name="Light">Sunrise, sunset and the light of the shift.</param>
/// <param name="Around">The days before and after.</param>
public sealed record DayReasons(
    TaskSummary Task,
    LocalDate Day,
    DayStatement Statement,
    IReadOnlyList<RuleReason> Deciding,
    IReadOnlyList<RuleReason> AlsoSpoke,
    IReadOnlyList<SingleChange> Changes,
    IReadOnlyList<string> Quiet,
    string Light,
    IReadOnlyList<DayCell> Around)
{
    private const int DaysBefore = 4;

    private static readonly LocalTimePattern Time = LocalTimePattern.CreateWithInvariantCulture("H:mm");

    /// <summary>
    /// The days to evaluate for the page of a day: those around it, and a year to see when rules let go.
    /// </summary>
    public static DaySpan DaysFor(LocalDate day) =>
        DaySpan.Between(day.PlusDays(-DaysBefore), AskedDays.YearFrom(day).Last);

    /// <param name="task">Evaluated over <see cref="DaysFor"/> the day.</param>
    /// <param name="day">The day.</param>
    /// <param name="today">The day that it is.</param>
    /// <param name="sun">Of the parcel on the day.</param>
    public static DayReasons Of(EvaluatedTask task, LocalDate day, LocalDate today, SunTimes sun)
    {
        var explanation = Explanation.Of(task.Evaluation, day);
        var deciding = explanation.Deciding.ToArray();
        return new(
            task.Task, day, DayStatement.Of(explanation, today),
            [.. deciding.Select(verdict => RuleReason.Of(verdict, day))],
            [.. explanation.Verdicts
                .Where(verdict => (verdict.Spoke || verdict.Lifting is not null) && !deciding.Contains(verdict))
                .OrderBy(verdict => Rank(verdict.Rule.Effect)).Select(verdict => RuleReason.Of(verdict, day))],
            SingleChanges.Of(task.Evaluation, day),
            [.. explanation.Verdicts.Where(verdict => !verdict.Spoke && verdict.Lifting is null)
                .Select(verdict => $"{verdict.Rule.Title}: {string.Join("; ", verdict.Findings.Select(Wording.Of))}")],
            LightOf(task, day, sun),
            DayCell.Of(task, new(day.PlusDays(-DaysBefore), WeekView.DaysShown), today, day));
    }

    private static int Rank(Effect effect) => effect switch
    {
        Effect.Closes => 0,
        Effect.Limits => 1,
        Effect.Requires => 2,
        Effect.Favours => 3,
        Effect.Lifts => 4,
    };

    private static string LightOf(EvaluatedTask task, LocalDate day, SunTimes sun)
    {
        var signals = task.Evaluation.Signals;
        var index = signals.Span.IndexOf(day);
        var light = signals[SignalKind.LightShiftMinutes]!.Values[index];
        var dark = signals[SignalKind.DarkShiftMinutes]!.Values[index];
        var inTheDark = dark > 0 ? $", {Hours(dark)} of it in the dark" : ", all of it in daylight";
        return $"Sunrise {At(sun.Sunrise)}, sunset {At(sun.Sunset)}. "
            + $"The shift is {Hours(light + dark)} long{inTheDark}.";

        string At(Instant? instant) =>
            instant is { } known ? Time.Format(known.InZone(task.Task.Zone).TimeOfDay) : "none";
    }

    private static string Hours(double minutes) => $"{(int)minutes / 60} h {(int)minutes % 60} min";
}
