using System.Collections.Immutable;
using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Signals;

/// <summary>One number a day over a span, in the unit of its kind.</summary>
/// <remarks>A day without a value holds <see cref="double.NaN"/> and the basis <see cref="Basis.Missing"/>.</remarks>
public sealed class Signal
{
    /// <param name="kind">What is measured, and in which unit.</param>
    /// <param name="span">The days.</param>
    /// <param name="values">One value a day of the span; NaN where there is none.</param>
    /// <param name="bases">How each value is known; <see cref="Basis.Missing"/> exactly where the value is NaN.</param>
    /// <exception cref="ArgumentException">The lengths differ, or a value and its basis disagree.</exception>
    public Signal(SignalKind kind, DaySpan span, ImmutableArray<double> values, ImmutableArray<Basis> bases)
    {
        if (values.Length != span.Count || bases.Length != span.Count)
            throw new ArgumentException($"{kind} has {values.Length} values and {bases.Length} bases for {span}.");
        for (var day = 0; day < values.Length; day++)
        {
            if (double.IsNaN(values[day]) != (bases[day] == Basis.Missing))
                throw new ArgumentException($"{kind} on {span[day]:R}: {values[day]} has the basis {bases[day]}.");
        }
        (Kind, Span, Values, Bases) = (kind, span, values, bases);
    }

    public SignalKind Kind { get; }

    public DaySpan Span { get; }

    public ImmutableArray<double> Values { get; }

    public ImmutableArray<Basis> Bases { get; }

    /// <summary>The same signal with another value on one day, as if it had been seen there.</summary>
    public Signal With(int day, double value) =>
        new(Kind, Span, Values.SetItem(day, value), Bases.SetItem(day, Basis.SiteObservation));

    internal Signal Slice(int first, DaySpan span) =>
        new(Kind, span, Values.Slice(first, span.Count), Bases.Slice(first, span.Count));

    /// <summary>A signal without any value: nothing reports it at this place.</summary>
    public static Signal Missing(SignalKind kind, DaySpan span) =>
        new(kind, span, [.. Enumerable.Repeat(double.NaN, span.Count)], [.. new Basis[span.Count]]);
}
