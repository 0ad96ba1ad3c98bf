using System.Globalization;
using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Records;

/// <summary>A reading that is not used, as people are told of it.</summary>
/// <param name="Date">The day that its source books it to.</param>
/// <param name="Station">The station's name.</param>
/// <param name="What">As in 'minimum temperature 99 °F'.</param>
/// <param name="Because">Why it is not used.</param>
public sealed record RejectedRow(LocalDate Date, string Station, string What, string Because);

/// <summary>The readings of a parcel's stations that are not used, the latest first.</summary>
/// <param name="Rows">The first of them.</param>
/// <param name="More">How many there are besides.</param>
public sealed record RejectedRows(IReadOnlyList<RejectedRow> Rows, int More)
{
    public const int Shown = 20;

    /// <param name="findings">The findings of each station, with its name.</param>
    public static RejectedRows Of(IEnumerable<(string Station, StationFindings.FindingsView Findings)> findings)
    {
        var all = findings
            .SelectMany(station => station.Findings.Rejected, (station, reading) => (station.Station, reading))
            .ToList();
        return new(
            [
                .. all.OrderByDescending(row => row.reading.Date).ThenBy(row => row.Station, StringComparer.Ordinal)
                    .ThenBy(row => row.reading.Element).Take(Shown)
                    .Select(row => new RejectedRow(
                        row.reading.Date, row.Station, What(row.reading), row.reading.Because)),
            ],
            Math.Max(0, all.Count - Shown));
    }

    private static string What(StationFindings.RejectedView reading)
    {
        var signal = SignalSetBuilder.SignalOf(reading.Element);
        var unit = RuleUnits.Usual(signal)!.Value;
        // What no station can have measured may be no number of another unit either.
        var value = double.IsFinite(reading.Value)
            ? $" {unit.FromSignalUnit(reading.Value).ToString("0.#", CultureInfo.InvariantCulture)} {unit.Symbol()}"
            : "";
        return Wording.Of(signal) + value;
    }
}
