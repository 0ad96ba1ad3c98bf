using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Chances.Verification;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Commands;

/// <summary>What of a station's record may be used.</summary>
internal sealed record StationWeather(string StationId, DailySeries Series);

/// <summary>Parcels and tasks under the weather of one place.</summary>
internal sealed record EvaluationInput(
    ImmutableArray<ParcelRow> Parcels, ImmutableArray<TaskRow> Tasks, DailySeries Weather)
{
    /// <summary>The stations that the weather was put together from, in the order of their files.</summary>
    public ImmutableArray<StationWeather> Stations { get; init; } = [];

    /// <summary>The name of the organization that plans the tasks; null when nobody said.</summary>
    public string? Organization { get; init; }

    public IReadOnlyList<EvaluatedRow> Evaluate(DaySpan days, ImmutableArray<RulePack> packs, SlowProgress progress)
    {
        var rows = new List<EvaluatedRow>(Tasks.Length);
        foreach (var (task, parcel, evaluations) in Evaluations(LeadIn.Before(days, packs), packs))
        {
            rows.Add(new(task, parcel, TaskSeason.Of(evaluations[0], days)));
            progress.Report(rows.Count, Tasks.Length, "tasks");
        }
        return rows;
    }

    /// <summary>Each task with its evaluation under each of several stacks of packs, in their order.</summary>
    public IEnumerable<(TaskRow Task, ParcelRow Parcel, TaskEvaluation[] Evaluations)> Evaluations(
        DaySpan span, params ImmutableArray<RulePack>[] stacks)
    {
        var parcels = Parcels.ToDictionary(row => row.Parcel);
        var points = new Dictionary<string, PointRules[]>();
        foreach (var task in Tasks)
        {
            var parcel = parcels[task.Parcel];
            if (!points.TryGetValue(task.Parcel, out var rules))
            {
                var signals = Signals(parcel, span);
                points[task.Parcel] = rules = [.. stacks.Select(packs => new PointRules(packs, signals))];
            }
            var facts = Facts(task, parcel);
            yield return (task, parcel, [.. rules.Select(point => point.Evaluate(facts))]);
        }
    }

    /// <summary>The parcels that have tasks, as places to look back at.</summary>
    public IEnumerable<BacktestSite> BacktestSites()
    {
        var parcels = Parcels.ToDictionary(row => row.Parcel);
        return Tasks.GroupBy(task => task.Parcel).Select(tasks => (Parcel: parcels[tasks.Key], Tasks: tasks))
            .Select(site => new BacktestSite(
                Point(site.Parcel), DateTimeZoneProviders.Tzdb[site.Parcel.TimeZone], Weather,
                [.. site.Tasks.Select(task => Facts(task, site.Parcel))]));
    }

    private static WeatherPoint Point(ParcelRow parcel) =>
        new(parcel.Parcel, parcel.Site.LatitudeDeg, parcel.Site.LongitudeDeg);

    private SignalSet Signals(ParcelRow parcel, DaySpan span) => SignalSetBuilder.Build(
        Point(parcel), span, Weather, null,
        DateTimeZoneProviders.Tzdb[parcel.TimeZone], WorkShift.Default, Alerts(span));

    /// <summary>Says what makes days unknown that a reader may not expect, a line each.</summary>
    public void Warn(TextWriter output, DaySpan days)
    {
        foreach (var warning in Warnings(days))
            output.WriteLine(warning);
    }

    private IEnumerable<string> Warnings(DaySpan days)
    {
        var columns =
            Enum.GetValues<DailyElement>().Select(element => Weather[element]).OfType<DailyColumn>().ToArray();
        if (columns.Length == 0)
        {
            yield return "The weather files have no reading that can be used.";
            yield break;
        }
        var (first, last) = (columns.Min(column => column.First), columns.Max(column => column.Last));
        if (days.First < first || days.Last > last)
            yield return $"The weather files reach from {first:R} to {last:R}; days outside have no readings.";
        if (Weather[DailyElement.WindMps] is null || Weather[DailyElement.GustMps] is null)
            yield return "The weather files report no wind or no gusts, so that days of felling and saw work are unknown.";
    }

    /// <summary>No record keeps alerts; of days after its end nobody knows whether one is in force.</summary>
    private AlertReport Alerts(DaySpan span)
    {
        var last = Enum.GetValues<DailyElement>().Select(element => Weather[element]?.Last).Max();
        var after = last is { } day ? LocalDate.Max(day.PlusDays(1), span.First) : span.First;
        return after > span.Last ? AlertReport.None : new([], DaySpan.Between(after, span.Last));
    }

    private TaskFacts Facts(TaskRow task, ParcelRow parcel) => new(
        task.Key, task.Practice, parcel.State, parcel.CountyFips,
        parcel.Stand.IsEmpty ? null : [.. parcel.Stand.Select(row => row.Species.Group)], parcel.Flags ?? [])
    {
        Organization = Organization,
        Place = new(parcel.Site.LatitudeDeg, parcel.Site.LongitudeDeg),
    };
}

/// <summary>A task of the files with its days.</summary>
internal sealed record EvaluatedRow(TaskRow Task, ParcelRow Parcel, TaskSeason Season);
