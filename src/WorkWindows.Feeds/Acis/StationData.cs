using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds.Acis;

/// <summary>Reads the StnData replies of the Applied Climate Information System.</summary>
/// <remarks>
/// <para>
/// Values are texts in °F and inches. <c>M</c> is missing; <c>T</c> a trace, which is 0: it fell, and was too little to
/// measure; <c>S</c> says that the amount is in a later day's total. A total of several days ends in <c>A</c>: nobody
/// knows on which of them it fell, so that it is kept with the flag A and not used.
/// </para>
/// <para>Source: Applied Climate Information System, web services documentation, rcc-acis.org.</para>
/// </remarks>
internal static class StationData
{
    private const char Accumulated = 'A';

    /// <summary>What is asked for, in the order of the values of a day.</summary>
    public static readonly ImmutableArray<AcisElement> Elements =
    [
        new("maxt", DailyElement.MaxTemperatureC, ElementUnit.Fahrenheit),
        new("mint", DailyElement.MinTemperatureC, ElementUnit.Fahrenheit),
        new("pcpn", DailyElement.PrecipitationMm, ElementUnit.Inches),
        new("snwd", DailyElement.SnowDepthCm, ElementUnit.DepthInches),
    ];

    /// <exception cref="FeedFormatException">
    /// The reply holds an error, no days, or those of another station.
    /// </exception>
    public static (ImmutableArray<DailyReading> Readings, FaultReport Faults) Read(
        ReadOnlyMemory<byte> json, string stationId, ImmutableArray<AcisElement> elements, DateInterval days)
    {
        using var document = FeedJson.Parse(json);
        var reply = document.RootElement;
        if (reply.Member("error")?.Text() is { } error)
            throw new FeedFormatException($"The service answered with an error: {error}");
        if (reply.Member("data") is not { ValueKind: JsonValueKind.Array } data)
            throw new FeedFormatException("The reply has no 'data', so it is not a station's record.");
        if (!Names(reply, stationId))
            throw new FeedFormatException($"The reply is not of station {stationId}.");
        var faults = new FaultCollector();
        var readings = new ReadingCollector(faults);
        foreach (var (index, row) in data.EnumerateArray().Index())
            ReadRow($"data[{index}]", row, elements, readings, faults);
        return (readings.Within(days), faults.ToReport());
    }

    /// <summary>Each of <c>sids</c> is an id and, after a blank, the number of its network.</summary>
    private static bool Names(JsonElement reply, string stationId) =>
        reply.Member("meta")?.Member("sids") is { ValueKind: JsonValueKind.Array } ids
        && ids.EnumerateArray().Any(id => id.Text()?.Split(' ')[0] == stationId);

    private static void ReadRow(
        string field, JsonElement row, ImmutableArray<AcisElement> elements, ReadingCollector readings,
        FaultCollector faults)
    {
        if (row.ValueKind != JsonValueKind.Array || row.GetArrayLength() != elements.Length + 1)
        {
            faults.Add(null, field, row.GetRawText(), $"a date and {elements.Length} values");
            return;
        }
        if (LocalDatePattern.Iso.Parse(row[0].Text() ?? "") is not { Success: true, Value: var date })
        {
            faults.Add(null, $"{field}[0]", row[0].GetRawText(), "an existing date as yyyy-MM-dd");
            return;
        }
        foreach (var (index, element) in elements.Index())
        {
            var cell = row[index + 1];
            Add($"{field} {element.Name}", date, element, cell.Text() ?? cell.GetRawText(), readings, faults);
        }
    }

    private static void Add(
        string field, LocalDate date, AcisElement element, string text, ReadingCollector readings,
        FaultCollector faults)
    {
        if (text is "M" or "S")
            return;
        var isTotal = text.EndsWith(Accumulated);
        var number = isTotal ? text[..^1] : text;
        const NumberStyles Decimal = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
        if (number is "T" && element.Unit != ElementUnit.Fahrenheit)
            readings.Add(field, date, element.Element, 0, element.Unit, isTotal ? Accumulated : null);
        else if (double.TryParse(number, Decimal, CultureInfo.InvariantCulture, out var value)
            && double.IsFinite(value))
            readings.Add(field, date, element.Element, value, element.Unit, isTotal ? Accumulated : null);
        else
            faults.Add(null, field, text, $"{element.Unit.Accepted(element.Element)}, M, T, S, or a total ending in A");
    }
}

/// <param name="Name">What the service calls it.</param>
/// <param name="Element">What it is here.</param>
/// <param name="Unit">What its values are in.</param>
internal sealed record AcisElement(string Name, DailyElement Element, ElementUnit Unit);
