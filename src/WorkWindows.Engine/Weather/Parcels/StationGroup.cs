using System.Collections.Immutable;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Weather.Quality;

namespace WorkWindows.Engine.Weather.Parcels;

/// <summary>A reading of one of several stations that the others contradict.</summary>
public sealed record StationRejection(string StationId, RejectedReading Reading);

/// <summary>
/// Stations that are looked at together: their days are set against each other and put right, temperatures that the
/// others contradict are taken out, and their usual differences are learnt. Made once, for all places among them.
/// </summary>
public sealed class StationGroup
{
    private readonly ElementValues min, max;

    private StationGroup(
        ImmutableArray<RecordStation> records, DaySpan days, byte[] months, ElementValues min, ElementValues max)
    {
        (Records, Days, Months, this.min, this.max) = (records, days, months, min, max);
        Stations = [.. records.Select(record => record.Station)];
    }

    /// <summary>The stations, by identifier.</summary>
    public ImmutableArray<RecordStation> Records { get; }

    public ImmutableArray<WeatherStation> Stations { get; }

    /// <summary>From the first to the last day with a temperature at any of them.</summary>
    public DaySpan Days { get; }

    /// <summary>The years in which readings stood on the wrong day, and were put right.</summary>
    public IEnumerable<DayShift> Shifts => min.Shifts.Concat(max.Shifts);

    /// <summary>Temperatures that the other stations contradict, on the days that they were booked to.</summary>
    public IEnumerable<StationRejection> Rejected => min.Rejected.Concat(max.Rejected);

    /// <summary>Lasting steps of a station that the others do not share. Its values stay in use.</summary>
    public IEnumerable<StationStep> Steps => min.Steps.Concat(max.Steps);

    /// <summary>The month of each day, 0 to 11.</summary>
    internal byte[] Months { get; }

    internal double[] Values(DailyElement element, int station) => Of(element).Values[station];

    /// <summary>The values of a station with those that the others contradict.</summary>
    internal double[] AsFound(DailyElement element, int station) => Of(element).AsFound(station);

    internal MonthlyOffsets Offsets(DailyElement element) => Of(element).Offsets;

    /// <summary>The stations by their distance from a place, after one that comes first wherever it lies.</summary>
    internal int[] InOrder(RecordPlace place, string? firstId) =>
    [
        .. Enumerable.Range(0, Stations.Length).OrderBy(station => Stations[station].Id != firstId)
            .ThenBy(station => place.DistanceM(Stations[station])),
    ];

    /// <param name="records">The stations, each once, in any order.</param>
    /// <returns>Null when none of them has a temperature.</returns>
    public static StationGroup? Of(IEnumerable<RecordStation> records)
    {
        ImmutableArray<RecordStation> stations =
            [.. records.OrderBy(record => record.Station.Id, StringComparer.Ordinal)];
        var columns = stations
            .SelectMany(record => new[]
            {
                record.Record.Usable[DailyElement.MinTemperatureC], record.Record.Usable[DailyElement.MaxTemperatureC],
            })
            .OfType<DailyColumn>().ToList();
        if (columns.Count == 0)
            return null;
        var days = DaySpan.Between(columns.Min(column => column.First), columns.Max(column => column.Last));
        var axis = new DayAxis(days.First, days.Count);
        return new(
            stations, days, axis.Months,
            ElementValues.Of(DailyElement.MinTemperatureC, stations, days, axis),
            ElementValues.Of(DailyElement.MaxTemperatureC, stations, days, axis));
    }

    private ElementValues Of(DailyElement element) => element switch
    {
        DailyElement.MinTemperatureC => min,
        DailyElement.MaxTemperatureC => max,
        _ => throw new ArgumentOutOfRangeException(nameof(element), element, "Only temperatures are blended."),
    };
}
