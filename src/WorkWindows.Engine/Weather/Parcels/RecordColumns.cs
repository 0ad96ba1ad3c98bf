using System.Collections.Immutable;
using System.Runtime.InteropServices;
using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Weather.Parcels;

/// <summary>Lays the values of a record out by element and day.</summary>
internal static class RecordColumns
{
    public static DailySeries Of(
        StationGroup group, int[] members, ImmutableDictionary<DailyElement, Blend> blends, bool isBlend)
    {
        var columns = ImmutableSortedDictionary.CreateBuilder<DailyElement, DailyColumn>();
        foreach (var element in Enum.GetValues<DailyElement>())
        {
            var own = group.Records[members[0]].Record.Usable[element];
            var column = element switch
            {
                DailyElement.MinTemperatureC or DailyElement.MaxTemperatureC =>
                    Blended(group.Days, blends[element], isBlend),
                DailyElement.WindMps or DailyElement.GustMps or DailyElement.ThunderChancePercent => own,
                DailyElement.PrecipitationMm or DailyElement.SnowDepthCm or DailyElement.MinHumidityPercent => Nearest(
                    element, [.. members.Select(member => group.Records[member].Record.Usable[element])]),
            };
            if (column is not null)
                columns.Add(element, column);
        }
        LeaveOutCrossed(columns);
        return DailySeries.Of(columns.ToImmutable());
    }

    private static DailyColumn Blended(DaySpan days, Blend blend, bool isBlend)
    {
        var values = new double[days.Count];
        var contributors = new byte[days.Count];
        for (var day = 0; day < values.Length; day++)
        {
            values[day] = blend.At(day, out var known);
            // Where the first station is the whole mean the others only count when it has no value.
            if (!isBlend && (known & DailyColumn.OwnValue) != 0)
                contributors[day] = DailyColumn.OwnValue;
            else if (known != 0)
                contributors[day] = (byte)(known | DailyColumn.Blended);
        }
        return Column(days, values, contributors);
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
        return Column(days, values, contributors);
    }

    private static void LeaveOutCrossed(ImmutableSortedDictionary<DailyElement, DailyColumn>.Builder columns)
    {
        var (min, max) = (columns[DailyElement.MinTemperatureC], columns[DailyElement.MaxTemperatureC]);
        var crossed = Enumerable.Range(0, min.Values.Length).Where(day => min.Values[day] > max.Values[day]).ToHashSet();
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

    private static DailyColumn Column(DaySpan days, double[] values, byte[] contributors) =>
        new(days.First, ImmutableCollectionsMarshal.AsImmutableArray(values), RejectedCount: 0, ReadsUsUnits: false)
        {
            Contributors = ImmutableCollectionsMarshal.AsImmutableArray(contributors),
        };
}
