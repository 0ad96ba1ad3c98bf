using System.Text.Json;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Decisions;

/// <summary>A set of signals as bytes, so that a decision can be evaluated again from exactly what it saw.</summary>
public static class Snapshot
{
    public static byte[] Write(SignalSet signals) => CanonicalJson.Write(json =>
    {
        json.WriteStartObject();
        json.WriteString("place", signals.Place);
        json.WriteString("first", CanonicalJson.Text(signals.Span.First));
        json.WriteNumber("days", signals.Span.Count);
        if (signals.ForecastIssued is { } issued)
            json.WriteString("forecastIssued", InstantPattern.ExtendedIso.Format(issued));
        json.WriteStartObject("signals");
        foreach (var (kind, signal) in signals.Signals)
            Write(json, kind, signal);
        json.WriteEndObject();
        json.WriteStartArray("events");
        foreach (var e in signals.Events)
        {
            json.WriteStartObject();
            json.WriteString("kind", e.Kind.ToString());
            json.WriteString("date", CanonicalJson.Text(e.Date));
            json.WriteString("basis", e.Basis.ToString());
            json.WriteNumber("years", e.Years);
            // Left out when there is none, so that the bytes and hashes of older snapshots stay what they were.
            if (e.Earliest is { } earliest)
                json.WriteString("earliest", CanonicalJson.Text(earliest));
            if (e.Latest is { } latest)
                json.WriteString("latest", CanonicalJson.Text(latest));
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    });

    /// <exception cref="JsonException">The bytes are not a snapshot.</exception>
    public static SignalSet Read(ReadOnlyMemory<byte> content)
    {
        using var document = JsonDocument.Parse(content);
        var root = document.RootElement;
        var span = new DaySpan(CanonicalJson.Date(root.GetProperty("first")), root.GetProperty("days").GetInt32());
        var signals = root.GetProperty("signals").EnumerateObject()
            .Select(property => Read(Enum.Parse<SignalKind>(property.Name), span, property.Value));
        var events = root.GetProperty("events").EnumerateArray().Select(e => new SeasonEvent(
            Enum.Parse<SeasonEventKind>(e.GetProperty("kind").GetString()!),
            CanonicalJson.Date(e.GetProperty("date")),
            Enum.Parse<Basis>(e.GetProperty("basis").GetString()!),
            e.GetProperty("years").GetInt32(),
            Day(e, "earliest"),
            Day(e, "latest")));
        var issued = root.TryGetProperty("forecastIssued", out var text)
            ? InstantPattern.ExtendedIso.Parse(text.GetString()!).GetValueOrThrow()
            : (Instant?)null;
        return SignalSet.Of(root.GetProperty("place").GetString()!, span, signals, events, issued);
    }

    private static LocalDate? Day(JsonElement element, string name) =>
        element.TryGetProperty(name, out var day) ? CanonicalJson.Date(day) : null;

    private static void Write(Utf8JsonWriter json, SignalKind kind, Signal signal)
    {
        json.WriteStartObject(kind.ToString());
        json.WriteStartArray("values");
        foreach (var value in signal.Values)
        {
            if (double.IsNaN(value))
                json.WriteNullValue();
            else
                json.WriteNumberValue(value);
        }
        json.WriteEndArray();
        json.WriteString("bases", string.Concat(signal.Bases.Select(basis => (char)('0' + (int)basis))));
        json.WriteEndObject();
    }

    private static Signal Read(SignalKind kind, DaySpan span, JsonElement element) => new(
        kind,
        span,
        [.. element.GetProperty("values").EnumerateArray()
            .Select(value => value.ValueKind == JsonValueKind.Null ? double.NaN : value.GetDouble())],
        [.. element.GetProperty("bases").GetString()!.Select(digit => (Basis)(digit - '0'))]);
}
