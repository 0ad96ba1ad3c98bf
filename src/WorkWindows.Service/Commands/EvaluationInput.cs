using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Commands;

/// <summary>Parcels and tasks under the weather of one place.</summary>
internal sealed record EvaluationInput(
    ImmutableArray<ParcelRow> Parcels, ImmutableArray<TaskRow> Tasks, DailySeries Weather)
{
    public IReadOnlyList<EvaluatedRow> Evaluate(DaySpan days, SlowProgress progress)
    {
        var packs = ShippedPacks.Read();
        var parcels = Parcels.ToDictionary(row => row.Parcel);
        var points = new Dictionary<string, PointRules>();
        var rows = new List<EvaluatedRow>(Tasks.Length);
        foreach (var task in Tasks)
        {
            var parcel = parcels[task.Parcel];
            if (!points.TryGetValue(task.Parcel, out var rules))
                points[task.Parcel] = rules = new(packs, Signals(parcel, LeadIn.Before(days, packs)));
            rows.Add(new(task, parcel, TaskSeason.Of(rules.Evaluate(Facts(task, parcel)), days)));
            progress.Report(rows.Count, Tasks.Length, "tasks");
        }
        return rows;
    }

    private SignalSet Signals(ParcelRow parcel, DaySpan span) => SignalSetBuilder.Build(
        new(parcel.Parcel, parcel.Site.LatitudeDeg, parcel.Site.LongitudeDeg), span, Weather, null,
        DateTimeZoneProviders.Tzdb[parcel.TimeZone], WorkShift.Default, AlertReport.None);

    private static TaskFacts Facts(TaskRow task, ParcelRow parcel) => new(
        task.Key, task.Practice, parcel.State, parcel.CountyFips,
        parcel.Stand.IsEmpty ? null : [.. parcel.Stand.Select(row => row.Species.Group)], parcel.Flags ?? [])
    {
        Place = new(parcel.Site.LatitudeDeg, parcel.Site.LongitudeDeg),
    };
}

/// <summary>A task of the files with its days.</summary>
internal sealed record EvaluatedRow(TaskRow Task, ParcelRow Parcel, TaskSeason Season);
