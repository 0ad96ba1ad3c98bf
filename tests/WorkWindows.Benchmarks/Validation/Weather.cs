using WorkWindows.Engine.Days;
using WorkWindows.Engine.Tests.Weather;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Parcels;

namespace WorkWindows.Benchmarks.Validation;

/// <summary>
/// How much of good records is rejected, and how far off the weather of a place without a station is.
/// </summary>
internal static class Weather
{
    private static readonly DaySpan Days = DaySpan.Between(new(1985, 1, 1), new(2014, 12, 31));

    private static readonly DistanceBand[] Bands =
        [new(0, 50_000), new(50_000, 100_000), new(100_000, 150_000), new(150_000, 200_000), new(200_000, 300_000)];

    public static string Section()
    {
        var stations = ReferenceStations.All;
        var reasons = stations.SelectMany(station => station.Record.Rejected).CountBy(reading => reading.Reason)
            .OrderByDescending(reason => reason.Value);
        var values = stations.Sum(station => Count(station.Record.Usable) + station.Record.Rejected.Length);
        var rejected = stations.Sum(station => station.Record.Rejected.Length);
        return $"""
            ## Quality control

            {stations.Count} stations of the middle west, {values:N0} minima and maxima: {rejected} rejected, {(double)rejected / values:0.00 %}.
            [rules/weather-quality.md](rules/weather-quality.md) says what is looked for, and how much of injected faults is
            found.

            | reason | readings |
            | --- | --- |
            {string.Join('\n', reasons.Select(reason => $"| {Words(reason.Key.ToString())} | {reason.Value} |"))}

            ## The weather of a place without a station

            Each station is held out in turn and told from the others, nearer ones than the band left out, as for a parcel at
            its place ([rules/parcel-record.md](rules/parcel-record.md)). Every day of 1985–2014. In brackets the nearest
            station's own value in its place.

            | temperature | nearest station used, km | stations | bias, °C | mean absolute error, °C | RMSE, °C |
            | --- | --- | --- | --- | --- | --- |
            {string.Join('\n', CrossValidation.Of(stations, Days, Bands).Select(Row))}

            """;
    }

    private static string Row(CrossValidationRow row) =>
        $"| {(row.Element == DailyElement.MinTemperatureC ? "minimum" : "maximum")} "
        + $"| {row.Band.FromM / 1000:0} to {row.Band.ToM / 1000:0} | {row.Stations} "
        + $"| {row.Blend.BiasC:0.00} ({row.Nearest.BiasC:0.00}) | {row.Blend.MaeC:0.00} ({row.Nearest.MaeC:0.00}) "
        + $"| {row.Blend.RmseC:0.00} ({row.Nearest.RmseC:0.00}) |";

    private static int Count(DailySeries series) =>
        new[] { DailyElement.MinTemperatureC, DailyElement.MaxTemperatureC }
            .Sum(element => series[element]!.Values.Count(value => !double.IsNaN(value)));

    /// <summary>Such as minimum above maximum.</summary>
    private static string Words(string name) =>
        string.Concat(name.Select(
            (letter, at) => char.IsUpper(letter) && at > 0 ? $" {char.ToLowerInvariant(letter)}" : $"{letter}"));
}
