namespace WorkWindows.Engine.Weather;

/// <summary>What the correlation of pairs is computed from.</summary>
internal sealed class PairSums
{
    private double x, y, xx, yy, xy;

    public int Count { get; private set; }

    /// <summary>NaN, which compares as false, when either does not vary.</summary>
    public double Correlation =>
        (Count * xy - x * y) / Math.Sqrt((Count * xx - x * x) * (Count * yy - y * y));

    public void Add(double first, double second)
    {
        Count++;
        x += first;
        y += second;
        xx += first * first;
        yy += second * second;
        xy += first * second;
    }
}
