using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Signals;

/// <summary>
/// Everything that rules may ask about one weather point over one span: the inputs of an evaluation besides the rules
/// and the task. Computed once and shared by every parcel of the point; a parcel with observations of its own has a
/// set that shares the same arrays.
/// </summary>
/// <param name="Place">The weather point's identifier, for people and for the decision record.</param>
/// <param name="Span">The days of every signal, lead-in days for runs included.</param>
/// <param name="Signals">The signals that are known at this place; one not listed is missing on every day.</param>
/// <param name="Events">The yearly events known for the years that the span touches.</param>
/// <param name="ForecastIssued">When the forecast behind values with the basis Forecast was issued.</param>
public sealed record SignalSet(
    string Place,
    DaySpan Span,
    ImmutableSortedDictionary<SignalKind, Signal> Signals,
    ImmutableArray<SeasonEvent> Events,
    Instant? ForecastIssued = null)
{
    /// <summary>A set of signals that must all cover the same span.</summary>
    /// <exception cref="ArgumentException">A signal covers another span.</exception>
    public static SignalSet Of(
        string place, DaySpan span, IEnumerable<Signal> signals, IEnumerable<SeasonEvent> events,
        Instant? forecastIssued = null)
    {
        var byKind = signals.ToImmutableSortedDictionary(signal => signal.Kind, signal => signal);
        if (byKind.Values.FirstOrDefault(signal => signal.Span != span) is { } stray)
            throw new ArgumentException($"{stray.Kind} covers {stray.Span}, the set covers {span}.", nameof(signals));
        return new(place, span, byKind, [.. events.OrderBy(e => e.Date)], forecastIssued);
    }

    public Signal? this[SignalKind kind] => Signals.GetValueOrDefault(kind);

    public SeasonEvent? Event(SeasonEventKind kind, int year) =>
        Events.FirstOrDefault(e => e.Kind == kind && e.Date.Year == year);

    /// <summary>Some of the signals over a part of the span.</summary>
    internal SignalSet Slice(int first, int count, IEnumerable<SignalKind> kinds)
    {
        var span = new DaySpan(Span[first], count);
        var slices = ImmutableSortedDictionary.CreateBuilder<SignalKind, Signal>();
        foreach (var kind in kinds)
        {
            if (Signals.TryGetValue(kind, out var signal) && !slices.ContainsKey(kind))
                slices.Add(kind, signal.Slice(first, span));
        }
        return this with { Span = span, Signals = slices.ToImmutable() };
    }

    /// <summary>The same signals with another one in the place of that of its kind.</summary>
    public SignalSet With(Signal changed) => this with { Signals = Signals.SetItem(changed.Kind, changed) };

    /// <summary>The same signals, with events seen on a property put in the place of the predicted ones.</summary>
    public SignalSet With(IEnumerable<SeasonEvent> seen)
    {
        var byYear = seen.ToDictionary(e => (e.Kind, e.Date.Year));
        return byYear.Count == 0
            ? this
            : this with
            {
                Events = [.. Events.Where(e => !byYear.ContainsKey((e.Kind, e.Date.Year)))
                    .Concat(byYear.Values).OrderBy(e => e.Date)],
            };
    }

    /// <summary>
    /// The same signals with what was read on a property put in the place of their own values; what is worked out from
    /// temperature, wind and humidity follows. Of several readings of a signal and a day the last one counts.
    /// </summary>
    public SignalSet With(IEnumerable<SiteReading> readings)
    {
        var changed = Signals.ToBuilder();
        var kinds = new HashSet<SignalKind>();
        foreach (var reading in readings)
        {
            var signal = changed.GetValueOrDefault(reading.Kind) ?? Signal.Missing(reading.Kind, Span);
            var last = Math.Min(Span.IndexOf(reading.Last), Span.Count - 1);
            for (var day = Math.Max(Span.IndexOf(reading.First), 0); day <= last; day++)
                signal = signal.With(day, reading.Value);
            changed[reading.Kind] = signal;
            kinds.Add(reading.Kind);
        }
        Follow(
            SignalKind.HeatIndexC, SignalKind.MaxTemperatureC, SignalKind.MinHumidityPercent, DerivedSignals.HeatIndex);
        Follow(SignalKind.WindChillC, SignalKind.MinTemperatureC, SignalKind.WindMps, DerivedSignals.WindChill);
        return kinds.Count == 0 ? this : this with { Signals = changed.ToImmutable() };

        void Follow(SignalKind derived, SignalKind left, SignalKind right, Func<Signal, Signal, Signal> derive)
        {
            if ((kinds.Contains(left) || kinds.Contains(right)) && changed.TryGetValue(left, out var one)
                && changed.TryGetValue(right, out var other))
            {
                changed[derived] = derive(one, other);
            }
        }
    }
}
