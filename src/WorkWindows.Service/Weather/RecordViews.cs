using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Parcels;

namespace WorkWindows.Service.Weather;

/// <summary>A parcel's record as the API shows it.</summary>
/// <param name="Stations">Where it comes from: the parcel's own station, then the others by distance.</param>
/// <param name="Errors">How far off worked out temperatures are.</param>
/// <param name="Days">The days asked for that have a value.</param>
public sealed record RecordView(
    IReadOnlyList<RecordView.StationPart> Stations, IReadOnlyList<RecordView.ErrorPart> Errors,
    IReadOnlyList<RecordView.DayPart> Days)
{
    /// <param name="GhcnId">The station.</param>
    /// <param name="Name">Its name.</param>
    /// <param name="DistanceM">Great-circle distance from the place, metres.</param>
    /// <param name="TemperatureShare">Its share in the temperatures; 0: it only fills gaps.</param>
    /// <param name="GivesWind">Whether wind and gusts come from it.</param>
    public sealed record StationPart(
        string GhcnId, string Name, double DistanceM, double TemperatureShare, bool GivesWind);

    /// <param name="Element">Minimum or maximum temperature.</param>
    /// <param name="FilledMaeC">
    /// Mean absolute error of days that the parcel's own station lacks, °C; null: not known.
    /// </param>
    /// <param name="BlendedMaeC">Mean absolute error of a blend, °C; null where one station is the whole value.</param>
    public sealed record ErrorPart(DailyElement Element, double? FilledMaeC, double? BlendedMaeC);

    public sealed record DayPart(LocalDate Date, IReadOnlyList<ValuePart> Values);

    /// <param name="Element">What it is, with its unit.</param>
    /// <param name="Value">The value in the unit of the element.</param>
    /// <param name="Basis">
    /// Observed, or interpolated from several stations or from another than the parcel's own.
    /// </param>
    /// <param name="IsFilled">The parcel's own station has no value of the day.</param>
    /// <param name="Weights">The stations that it comes from, with weights that sum to 1.</param>
    public sealed record ValuePart(
        DailyElement Element, double Value, Basis Basis, bool IsFilled, IReadOnlyList<WeightPart> Weights);

    public sealed record WeightPart(string GhcnId, double Weight);

    /// <param name="record">The record.</param>
    /// <param name="observed">The same with wind of its station.</param>
    /// <param name="source">Where they come from.</param>
    /// <param name="days">The days to show.</param>
    internal static RecordView Of(ParcelRecord record, DailySeries observed, WeatherSource source, DaySpan days)
    {
        var stations = record.Stations.Select(part => new StationPart(
            part.Station.Id, part.Station.Name, Math.Round(part.DistanceM), Math.Round(part.Share, 3),
            part.Station.Id == source.Wind?.GhcnId)).ToList();
        if (source.Wind is { } wind && stations.TrueForAll(part => part.GhcnId != wind.GhcnId))
        {
            stations.Add(new(
                wind.GhcnId, wind.Name, Math.Round(source.Place.DistanceM(wind.Described())), 0, true));
        }
        DailyElement[] temperatures = [DailyElement.MinTemperatureC, DailyElement.MaxTemperatureC];
        return new(
            stations,
            [.. temperatures.Select(element => new ErrorPart(
                element, Rounded(record.FillingError(element)?.MaeC), Rounded(record.BlendingError(element)?.MaeC)))],
            [.. Enumerable.Range(0, days.Count).Select(day => Day(record, observed, source, days[day]))
                .Where(day => day.Values.Count > 0)]);
    }

    private static DayPart Day(ParcelRecord record, DailySeries observed, WeatherSource source, LocalDate date) => new(
        date,
        [.. Enum.GetValues<DailyElement>().Where(
            element => observed[element] is { } column && !double.IsNaN(column[date]))
            .Select(element => Value(record, observed[element]!, element, source, date))]);

    private static ValuePart Value(
        ParcelRecord record, DailyColumn column, DailyElement element, WeatherSource source, LocalDate date)
    {
        var isWind = element is DailyElement.WindMps or DailyElement.GustMps;
        WeightPart[] weights = isWind
            ? [new((source.Wind ?? source.Primary!).GhcnId, 1)]
            : [.. record.WeightsOf(element, date).Select(
                part => new WeightPart(part.Station.Id, Math.Round(part.Weight, 3)))];
        var value = column.ReadsUsUnits ? AsRead.Restore(element, column[date]) : column[date];
        return new(
            element, Math.Round(value, 2), column.IsOwn(date) ? Basis.Observed : Basis.Interpolated,
            !isWind && weights.All(part => part.GhcnId != source.Primary?.GhcnId), weights);
    }

    private static double? Rounded(double? errorC) => errorC is { } known ? Math.Round(known, 2) : null;
}
