using System.Collections.Immutable;
using System.Numerics;
using System.Runtime.InteropServices;
using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Weather.Parcels;

/// <summary>Lays the values of a record out by element and day.</summary>
internal static class RecordColumns
{
    public static DailySeries Of(
        StationGroup group, int[] members, ImmutableDictionary<DailyElement, Blend> blends, int? whole)
    {
        var columns = ImmutableSortedDictionary.CreateBuilder<DailyElement, DailyColumn>();
        foreach (var element in Enum.GetValues<DailyElement>())
        {
            DailyColumn?[] read = [.. members.Select(member => group.Records[member].Record.Usable[element])];
            var column = element switch
            {
                DailyElement.MinTemperatureC or DailyElement.MaxTemperatureC =>
                    Blended(group.Days, blends[element], whole, read),
                DailyElement.WindMps or DailyElement.GustMps or DailyElement.ThunderChancePercent => read[0],
                DailyElement.PrecipitationMm or DailyElement.SnowDepthCm or DailyElement.MinHumidityPercent =>
                    Nearest(element, read),
            };
            if (column is not null)
                columns.Add(element, column);
        }
        LeaveOutCrossed(columns);
        return DailySeries.Of(columns.ToImmutable());
    }

    private static DailyColumn Blended(DaySpan days, Blend blend, int? whole, DailyColumn?[] read)
    {
        var values = new double[days.Count];
        var contributors = new byte[days.Count];
        for (var day = 0; day < values.Length; day++)
        {
            values[day] = blend.At(day, out var known);
            // Where one station is the whole mean the others, even the first, only count when it has no value.
            if (whole is { } one && (known & 1 << one) != 0)
                contributors[day] = (byte)(1 << one);
            else if (known != 0)
                contributors[day] = (byte)(known | DailyColumn.Blended);
        }
        return Column(days, values, contributors, read);
    }

    /// <summary>Each day's value of the first station that has one.</summary>
    private static DailyColumn? Nearest(DailyElement element, DailyColumn?[] columns)
    {
        var there = columns.OfType<DailyColumn>().ToList();
        if (there.Count == 0)
            return null;
        var days = DaySpan.Between(there.Min(column => column.First), there.Max(column => column.Last));
        var values = new double[days.Count];
        Array.Fill(values, double.NaN);
        var contributors = new byte[days.Count];
        var known = new double[days.Count];
        for (var i = 0; i < columns.Length; i++)
        {
            if (columns[i] is not { } column)
                continue;
            column.CopyTo(days, known);
            for (var day = 0; day < values.Length; day++)
            {
                if (!double.IsNaN(values[day]) || double.IsNaN(known[day]))
                    continue;
                values[day] = column.ReadsUsUnits ? AsRead.Restore(element, known[day]) : known[day];
                contributors[day] = (byte)(1 << i);
            }
        }
        return Column(days, values, contributors, columns);
    }

    private static void LeaveOutCrossed(ImmutableSortedDictionary<DailyElement, DailyColumn>.Builder columns)
    {
        var (min, max) = (columns[DailyElement.MinTemperatureC], columns[DailyElement.MaxTemperatureC]);
        var crossed =
            Enumerable.Range(0, min.Values.Length).Where(day => min.Values[day] > max.Values[day]).ToHashSet();
        if (crossed.Count == 0)
            return;
        columns[DailyElement.MinTemperatureC] = Without(min, crossed);
        columns[DailyElement.MaxTemperatureC] = Without(max, crossed);
    }

    private static DailyColumn Without(DailyColumn column, HashSet<int> days) => column with
    {
        Values = [.. column.Values.Select((value, day) => days.Contains(day) ? double.NaN : value)],
        Contributors = [.. column.Contributors.Select((from, day) => days.Contains(day) ? (byte)0 : from)],
    };

    private static DailyColumn Column(DaySpan days, double[] values, byte[] contributors, DailyColumn?[] read)
    {
        // As one station read them all, they are as whole in its units as they were there.
        var from = contributors.Where(from => from != 0).Distinct().ToList();
        var readsUsUnits = from is [var only] && BitOperations.IsPow2(only)
            && read[BitOperations.Log2(only)] is { ReadsUsUnits: true };
        return new(days.First, ImmutableCollectionsMarshal.AsImmutableArray(values), RejectedCount: 0, readsUsUnits)
        {
            Contributors = ImmutableCollectionsMarshal.AsImmutableArray(contributors),
        };
    }
}
