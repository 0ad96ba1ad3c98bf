using System.Collections.Immutable;
using System.Text.Json;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Stations;

namespace WorkWindows.Feeds.Ncei;

/// <summary>
/// Reads the JSON of the Access Data Service: flat objects whose values are texts. What was not observed is absent.
/// </summary>
/// <remarks>Its CSV is a form of station file: <see cref="StationFile"/> reads it.</remarks>
public static class DailySummaries
{
    /// <param name="json">The reply of <c>dataset=daily-summaries&amp;format=json</c>, UTF-8.</param>
    /// <param name="units">The units that were asked for; <see cref="StationUnits.Tenths"/> where none were.</param>
    /// <param name="stationId">The station that was asked for.</param>
    /// <returns>Ascending by date and element, each pair once, and the values that cannot be used.</returns>
    /// <exception cref="FeedFormatException">The reply is no list of days.</exception>
    public static (ImmutableArray<DailyReading> Readings, FaultReport Faults) Read(
        ReadOnlyMemory<byte> json, StationUnits units, string stationId)
    {
        using var document = FeedJson.Parse(json);
        if (document.RootElement.ValueKind != JsonValueKind.Array)
            throw new FeedFormatException("The reply is no list of days.");
        var faults = new FaultCollector();
        var days = new StationDays(faults);
        var table = new WideTable(units, days, faults);
        var row = 0;
        foreach (var element in document.RootElement.EnumerateArray())
        {
            row++;
            var station = element.Member("STATION")?.Text();
            if (station is not null && station != stationId)
                faults.Add(row, "STATION", station, stationId);
            else if (table.TryStart(row, station, element.Member("DATE")?.Text()))
                ReadCells(element, table);
        }
        var readings = days.Build(row).Readings;
        return (readings, faults.ToReport().InRows());
    }

    private static void ReadCells(JsonElement row, WideTable table)
    {
        foreach (var member in row.EnumerateObject())
        {
            if (WideTable.Find(member.Name) is { } element)
            {
                table.AddCell(
                    element, member.Value.Text() ?? member.Value.GetRawText(),
                    row.Member(member.Name + WideTable.Attributes)?.Text() ?? "");
            }
        }
    }

    /// <summary>JSON has no lines: rows are named by their place in the list.</summary>
    private static FaultReport InRows(this FaultReport report) => report with
    {
        Faults =
        [
            .. report.Faults.Select(fault => fault with { Line = null, Field = $"[{fault.Line - 1}].{fault.Field}" }),
        ],
    };
}
