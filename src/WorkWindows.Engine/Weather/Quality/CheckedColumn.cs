using System.Runtime.InteropServices;
using NodaTime;

namespace WorkWindows.Engine.Weather.Quality;

/// <summary>
/// One element of a record while it is checked: values that are rejected are taken out and remembered.
/// </summary>
internal sealed class CheckedColumn
{
    private readonly List<RejectedReading> rejected = [];

    private CheckedColumn(DailyElement element, LocalDate first, double[] values) =>
        (Element, First, Values) = (element, first, values);

    public DailyElement Element { get; }

    public LocalDate First { get; }

    /// <summary>One value a day, NaN where there is none that may be used.</summary>
    public double[] Values { get; }

    public IEnumerable<RejectedReading> Rejected => rejected.OrderBy(reading => reading.Date);

    /// <summary>
    /// Lays out readings of one element; flagged ones, and those of a day with two values, are rejected.
    /// </summary>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static CheckedColumn Of(DailyElement element, IReadOnlyCollection<DailyReading> readings)
    {
        var first = readings.Min(reading => reading.Date);
        var values = new double[Period.DaysBetween(first, readings.Max(reading => reading.Date)) + 1];
        Array.Fill(values, double.NaN);
        var column = new CheckedColumn(element, first, values);
        HashSet<int>? doubted = null;
        foreach (var reading in readings)
        {
            if (!double.IsFinite(reading.Value))
                throw new ArgumentException($"{element} on {reading.Date:R} is {reading.Value}.", nameof(readings));
            var day = Period.DaysBetween(first, reading.Date);
            if (reading.QualityFlag is not null)
                column.Remember(reading, RejectionReason.SourceFlag);
            else if (doubted?.Contains(day) == true)
                column.Remember(reading, RejectionReason.Duplicate);
            else if (double.IsNaN(values[day]))
                values[day] = reading.Value;
            else if (values[day] != reading.Value)
            {
                column.Reject(day, RejectionReason.Duplicate);
                column.Remember(reading, RejectionReason.Duplicate);
                (doubted ??= []).Add(day);
            }
        }
        return column;
    }

    /// <summary>A column of a record that may be used, to be checked further.</summary>
    public static CheckedColumn Of(DailyElement element, DailyColumn column) =>
        new(element, column.First, [.. column.Values]);

    /// <summary>Takes a day's value out; a day without one stays as it is.</summary>
    public void Reject(int day, RejectionReason reason)
    {
        if (double.IsNaN(Values[day]))
            return;
        rejected.Add(new(First.PlusDays(day), Element, Values[day], reason));
        Values[day] = double.NaN;
    }

    public DailyColumn ToColumn(bool readsUsUnits, int rejectedBefore = 0) => new(
        First, ImmutableCollectionsMarshal.AsImmutableArray(Values), rejectedBefore + rejected.Count, readsUsUnits);

    private void Remember(DailyReading reading, RejectionReason reason) =>
        rejected.Add(new(reading.Date, Element, reading.Value, reason));
}
