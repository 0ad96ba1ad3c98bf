using System.Collections.Immutable;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Weather.Quality;

namespace WorkWindows.Engine.Weather.Parcels;

/// <summary>
/// One temperature of every station of a group, on its own days, with what was put right and taken out.
/// </summary>
internal sealed class ElementValues
{
    private readonly ImmutableArray<(int Station, int Day, double Value)> takenOut;

    private ElementValues(
        double[][] values, MonthlyOffsets offsets, ImmutableArray<(int Station, int Day, double Value)> takenOut) =>
        (Values, Offsets, this.takenOut) = (values, offsets, takenOut);

    /// <summary>For each station a value a day, as it was read, NaN where there is none.</summary>
    public double[][] Values { get; }

    public MonthlyOffsets Offsets { get; }

    public required ImmutableArray<DayShift> Shifts { get; init; }

    public required ImmutableArray<StationRejection> Rejected { get; init; }

    public required ImmutableArray<StationStep> Steps { get; init; }

    /// <summary>
    /// A station's values with those that the others contradict: how well the others tell it must not be measured
    /// without them.
    /// </summary>
    public double[] AsFound(int station)
    {
        var values = (double[])Values[station].Clone();
        foreach (var taken in takenOut.Where(taken => taken.Station == station))
            values[taken.Day] = taken.Value;
        return values;
    }

    public static ElementValues Of(
        DailyElement element, ImmutableArray<RecordStation> stations, DaySpan days, DayAxis axis)
    {
        var booked = stations.Select(station => AsRead(element, station, days)).ToArray();
        var years = Years(days);
        // A maximum that the station's own minima show a day late is put back first.
        var own = stations.Select(station => Own(element, station, years)).ToArray();
        var put = booked.Select((values, i) => Moved(values, years, own[i]).Values).ToArray();
        var found = DayLags.Find(
            put, (one, other) => AreNear(stations, one, other, DayLags.MaxDistanceM),
            [.. years.Select(year => year.Days)]);
        var lags =
            own.Select((mine, i) => mine.Select((lag, year) => (sbyte)(lag + found[i][year])).ToArray()).ToArray();
        var moved = booked.Select((values, i) => Moved(values, years, lags[i])).ToArray();
        var right = moved.Select(station => station.Values).ToArray();
        var takenOut = TakeOut(stations, axis, right);
        return new(right, MonthlyOffsets.Learn(right, axis.Months), takenOut)
        {
            Shifts = [.. stations.SelectMany((station, i) => years.Select((year, at) =>
                new DayShift(station.Station.Id, element, year.Year, lags[i][at])).Where(
                    shift => shift.DaysLate != 0))],
            Rejected =
            [
                .. takenOut.Select(taken => new StationRejection(stations[taken.Station].Station.Id, new(
                    days[taken.Day + moved[taken.Station].By[taken.Day]], element, taken.Value,
                    RejectionReason.UnlikeNeighbours))),
            ],
            Steps =
            [
                .. LastingSteps.Find(right, (one, other) => DistanceM(stations, one, other), axis.Months)
                    .Select(step => new StationStep(
                        stations[step.Station].Station.Id, element,
                        days.First.PlusDays(1 - days.First.Day).PlusMonths(step.Month), step.SizeC)),
            ],
        };
    }

    private static bool AreNear(ImmutableArray<RecordStation> stations, int one, int other, double withinM) =>
        DistanceM(stations, one, other) <= withinM;

    private static double DistanceM(ImmutableArray<RecordStation> stations, int one, int other) =>
        RecordPlace.Of(stations[one].Station).DistanceM(stations[other].Station);

    private static double[] AsRead(DailyElement element, RecordStation station, DaySpan days)
    {
        var values = new double[days.Count];
        Array.Fill(values, double.NaN);
        if (station.Record.Usable[element] is not { } column)
            return values;
        column.CopyTo(days, values);
        for (var day = 0; column.ReadsUsUnits && day < values.Length; day++)
        {
            if (!double.IsNaN(values[day]))
                values[day] = Weather.AsRead.Restore(element, values[day]);
        }
        return values;
    }

    private static List<(int Year, (int First, int End) Days)> Years(DaySpan days) =>
    [
        .. Enumerable.Range(days.First.Year, days.Last.Year - days.First.Year + 1).Select(year => (
            year,
            (Math.Max(0, days.IndexOf(new(year, 1, 1))), Math.Min(days.Count, days.IndexOf(new(year + 1, 1, 1)))))),
    ];

    private static sbyte[] Own(
        DailyElement element, RecordStation station, List<(int Year, (int First, int End) Days)> years)
    {
        var shifted = element == DailyElement.MaxTemperatureC ? ShiftedMaxima.Years(station.Record.Usable) : [];
        return [.. years.Select(year => shifted.Contains(year.Year) ? (sbyte)1 : (sbyte)0)];
    }

    /// <summary>The values on their own days, and by how many days each was moved.</summary>
    private static (double[] Values, sbyte[] By) Moved(
        double[] booked, List<(int Year, (int First, int End) Days)> years, sbyte[] daysLate)
    {
        var values = new double[booked.Length];
        var by = new sbyte[booked.Length];
        Array.Fill(values, double.NaN);
        for (var at = 0; at < years.Count; at++)
        {
            var lag = daysLate[at];
            for (var day = years[at].Days.First; day < years[at].Days.End; day++)
            {
                var own = day - lag;
                // Between two years of which one is moved, a day may get two values: the earlier booking stands.
                if (own >= 0 && own < values.Length && double.IsNaN(values[own]))
                    (values[own], by[own]) = (booked[day], lag);
            }
        }
        return (values, by);
    }

    private static ImmutableArray<(int Station, int Day, double Value)> TakeOut(
        ImmutableArray<RecordStation> stations, DayAxis axis, double[][] values)
    {
        var usual = MonthlyOffsets.Learn(values, axis.Months);
        var found = Enumerable.Range(0, stations.Length).Select(station => UnlikeNeighbours.Days(
            station, values,
            [.. Enumerable.Range(0, stations.Length).Where(other =>
                other != station && AreNear(stations, station, other, UnlikeNeighbours.MaxDistanceM))],
            (other, month) => usual.Of(station, other, month), axis.Months).ToList()).ToList();
        var taken = ImmutableArray.CreateBuilder<(int, int, double)>();
        for (var station = 0; station < stations.Length; station++)
        {
            foreach (var day in found[station])
            {
                taken.Add((station, day, values[station][day]));
                values[station][day] = double.NaN;
            }
        }
        return taken.ToImmutable();
    }
}
