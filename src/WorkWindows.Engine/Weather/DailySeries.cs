using System.Collections.Immutable;
using System.Runtime.InteropServices;
using NodaTime;

namespace WorkWindows.Engine.Weather;

/// <summary>
/// Daily values of a station or a forecast, laid out by element. Only values that may be used are in it.
/// </summary>
public sealed class DailySeries
{
    private const int NamedDuplicates = 10;

    private readonly ImmutableSortedDictionary<DailyElement, DailyColumn> columns;

    private DailySeries(ImmutableSortedDictionary<DailyElement, DailyColumn> columns) => this.columns = columns;

    /// <summary>A series without any value.</summary>
    public static DailySeries Empty { get; } = new(ImmutableSortedDictionary<DailyElement, DailyColumn>.Empty);

    /// <summary>The column of an element, or null when no reading of it was given.</summary>
    public DailyColumn? this[DailyElement element] => columns.GetValueOrDefault(element);

    /// <summary>Lays readings out by element and day.</summary>
    /// <param name="readings">
    /// In any order, gaps allowed. A reading with a quality flag is never used, and neither are the minimum and the
    /// maximum of a day whose minimum is above its maximum.
    /// </param>
    /// <param name="readsUsUnits">
    /// Whether the station reads whole °F, whole mph and inches, as those of the United States do, whatever units its
    /// file has.
    /// </param>
    /// <exception cref="ArgumentException">
    /// A date has two readings of an element, flagged or not, or a value is not finite; the dates and elements are
    /// named.
    /// </exception>
    public static DailySeries Of(IEnumerable<DailyReading> readings, bool readsUsUnits = false)
    {
        var byElement = new SortedDictionary<DailyElement, ColumnDraft>();
        foreach (var group in readings.GroupBy(reading => reading.Element))
            byElement[group.Key] = ColumnDraft.Of([.. group]);

        var faults = byElement.Values.SelectMany(draft => draft.Faults).ToList();
        if (faults.Count > 0)
        {
            var more = faults.Count > NamedDuplicates ? $", and {faults.Count - NamedDuplicates} more" : "";
            throw new ArgumentException(
                $"Not one finite value a day: {string.Join(", ", faults.Take(NamedDuplicates))}{more}.",
                nameof(readings));
        }
        if (byElement.TryGetValue(DailyElement.MinTemperatureC, out var min)
            && byElement.TryGetValue(DailyElement.MaxTemperatureC, out var max))
        {
            ColumnDraft.RejectCrossed(min, max);
        }
        return new(byElement.ToImmutableSortedDictionary(pair => pair.Key, pair => new DailyColumn(pair.Value.First,
            ImmutableCollectionsMarshal.AsImmutableArray(pair.Value.Values), pair.Value.Rejected,
            readsUsUnits)));
    }

    /// <summary>A series of columns that have been checked.</summary>
    internal static DailySeries Of(ImmutableSortedDictionary<DailyElement, DailyColumn> columns) => new(columns);

    /// <summary>The same series with elements of another in the place of its own, such as wind of an airport.</summary>
    /// <remarks>An element that the other series does not have is then missing.</remarks>
    public DailySeries WithElements(DailySeries other, params ReadOnlySpan<DailyElement> elements)
    {
        var merged = columns;
        foreach (var element in elements)
            merged = other[element] is { } column ? merged.SetItem(element, column) : merged.Remove(element);
        return new(merged);
    }

    /// <summary>The same series with a column in the place of its own.</summary>
    internal DailySeries With(DailyElement element, DailyColumn column) => new(columns.SetItem(element, column));

    private sealed class ColumnDraft(LocalDate first, double[] values)
    {
        public LocalDate First { get; } = first;

        public double[] Values { get; } = values;

        public int Rejected { get; private set; }

        public List<string> Faults { get; } = [];

        public static ColumnDraft Of(List<DailyReading> readings)
        {
            var first = readings.Min(reading => reading.Date);
            var values = new double[Period.DaysBetween(first, readings.Max(reading => reading.Date)) + 1];
            Array.Fill(values, double.NaN);
            var draft = new ColumnDraft(first, values);
            var taken = new bool[values.Length];
            foreach (var reading in readings)
            {
                var day = Period.DaysBetween(first, reading.Date);
                if (taken[day] || !double.IsFinite(reading.Value))
                    draft.Faults.Add($"{reading.Element} on {reading.Date:R}");
                else if (reading.QualityFlag is null)
                    values[day] = reading.Value;
                else
                    draft.Rejected++;
                taken[day] = true;
            }
            return draft;
        }

        public static void RejectCrossed(ColumnDraft min, ColumnDraft max)
        {
            var offset = Period.DaysBetween(min.First, max.First);
            var end = Math.Min(min.Values.Length, max.Values.Length + offset);
            for (var day = Math.Max(0, offset); day < end; day++)
            {
                if (!(min.Values[day] > max.Values[day - offset]))
                    continue;
                min.Values[day] = max.Values[day - offset] = double.NaN;
                min.Rejected++;
                max.Rejected++;
            }
        }
    }
}
