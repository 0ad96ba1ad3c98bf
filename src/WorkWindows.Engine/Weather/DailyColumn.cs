using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Weather;

/// <summary>
/// One element of a daily series: a value a day without gaps in the dates, NaN for a day without a value.
/// </summary>
/// <param name="First">The date of the first value.</param>
/// <param name="Values">Values in the unit of the element; at least one.</param>
/// <param name="RejectedCount">Readings left out: flagged by their source, or a minimum above its maximum.</param>
/// <param name="ReadsUsUnits">
/// Whether the station reads in units of the United States, whatever unit its file has.
/// </param>
public sealed record DailyColumn(
    LocalDate First, ImmutableArray<double> Values, int RejectedCount, bool ReadsUsUnits)
{
    /// <summary>The value of <see cref="Contributors"/> on a day whose value is the first station's own.</summary>
    public const byte OwnValue = 1;

    /// <summary>Added to <see cref="Contributors"/> on a day whose value is not as any station read it.</summary>
    public const byte Blended = 0x80;

    /// <summary>
    /// Where the values of a column come from that was put together from several stations: for each day a bit for each
    /// of them, the first one's lowest, and <see cref="Blended"/>. Default for a column of one station's own readings.
    /// </summary>
    public ImmutableArray<byte> Contributors { get; init; }

    public LocalDate Last => First.PlusDays(Values.Length - 1);

    /// <summary>The value of a date; NaN where there is none.</summary>
    public double this[LocalDate date] =>
        date >= First && date <= Last ? Values[Period.DaysBetween(First, date)] : double.NaN;

    /// <summary>The values as the station read them, so that limits compare with what was read.</summary>
    internal DailyColumn AsRead(DailyElement element) => !ReadsUsUnits ? this : this with
    {
        Values = [.. Values.Select(value => double.IsNaN(value) ? value : Weather.AsRead.Restore(element, value))],
        ReadsUsUnits = false,
    };

    /// <summary>
    /// Whether a day's value was read at the station that the column is of, not worked out from others.
    /// </summary>
    public bool IsOwn(LocalDate date) =>
        Contributors.IsDefault || (date >= First && date <= Last
            && Contributors[Period.DaysBetween(First, date)] == OwnValue);

    /// <summary>Writes the values of a span, NaN on its days without a value.</summary>
    /// <exception cref="ArgumentException">The target is shorter than the span.</exception>
    public void CopyTo(DaySpan span, Span<double> target)
    {
        if (target.Length < span.Count)
            throw new ArgumentException($"{target.Length} values cannot hold {span}.", nameof(target));
        target[..span.Count].Fill(double.NaN);
        var offset = Period.DaysBetween(First, span.First);
        var from = Math.Max(0, offset);
        var to = Math.Min(Values.Length, offset + span.Count);
        if (from < to)
            Values.AsSpan()[from..to].CopyTo(target[(from - offset)..]);
    }
}
