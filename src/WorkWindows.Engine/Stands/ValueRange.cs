namespace WorkWindows.Engine.Stands;

/// <summary>A number that is known to lie between two values, both included; the unit is that of its name.</summary>
public readonly record struct ValueRange
{
    /// <exception cref="ArgumentException">The ends are the wrong way round, or one is no number.</exception>
    public ValueRange(double low, double high)
    {
        if (!(low <= high))
            throw new ArgumentException($"{low} to {high} is no range.", nameof(high));
        (Low, High) = (low, high);
    }

    public double Low { get; }

    public double High { get; }

    /// <summary>Whether published models agree.</summary>
    public bool IsOne => Low == High;

    public static ValueRange Of(double value) => new(value, value);

    /// <summary>From the least to the greatest of some values.</summary>
    /// <exception cref="InvalidOperationException">There is none.</exception>
    public static ValueRange Over(IEnumerable<double> values)
    {
        var all = values.ToArray();
        return new(all.Min(), all.Max());
    }

    public static ValueRange operator +(ValueRange left, ValueRange right) =>
        new(left.Low + right.Low, left.High + right.High);

    /// <param name="range">The range.</param>
    /// <param name="factor">Not negative.</param>
    public static ValueRange operator *(ValueRange range, double factor) => new(range.Low * factor, range.High * factor);

    /// <summary>The range of a function that grows with its argument.</summary>
    public ValueRange Through(Func<double, double> growing) => new(growing(Low), growing(High));
}
