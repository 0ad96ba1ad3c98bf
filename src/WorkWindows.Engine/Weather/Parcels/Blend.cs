namespace WorkWindows.Engine.Weather.Parcels;

/// <summary>
/// Values of one element at a place, as a weighted mean of stations. A station that lacks a day is first filled from
/// the others, moved by their usual difference of the month, so that the mean does not leap where one drops out.
/// </summary>
/// <param name="element">Minimum or maximum temperature.</param>
/// <param name="group">The stations.</param>
/// <param name="members">Which of them to blend, at most eight.</param>
/// <param name="shares">Their shares in the mean, which sum to 1; a station with none only fills gaps.</param>
/// <param name="closeness">Their weights against each other when one of them is filled; each positive.</param>
/// <param name="elevationM">
/// Of the place; null, as where one station is the whole mean, to keep the stations' heights.
/// </param>
internal sealed class Blend(
    DailyElement element, StationGroup group, int[] members, double[] shares, double[] closeness, double? elevationM)
{
    private const int Months = 12;

    private readonly double[][] values = [.. members.Select(member => group.Values(element, member))];
    private readonly Mix?[] mixes = new Mix?[1 << members.Length];

    /// <summary>The value of a day of the group; NaN when no station has one.</summary>
    /// <param name="day">Index of the day.</param>
    /// <param name="known">A bit for each member that has a value, the first one's lowest.</param>
    /// <param name="without">A member to be treated as without a value; -1 for none.</param>
    public double At(int day, out int known, int without = -1)
    {
        known = 0;
        for (var i = 0; i < values.Length; i++)
        {
            if (i != without && !double.IsNaN(values[i][day]))
                known |= 1 << i;
        }
        if (known == 0)
            return double.NaN;
        var mix = mixes[known] ??= MixOf(known);
        var sum = mix.OffsetsC[group.Months[day]];
        for (var i = 0; i < values.Length; i++)
        {
            if (mix.Weights[i] > 0)
                sum += mix.Weights[i] * values[i][day];
        }
        return sum;
    }

    /// <summary>The weight of each member on the days on which those of a set have a value; they sum to 1.</summary>
    public double[] WeightsOf(int known) => (mixes[known] ??= MixOf(known)).Weights;

    private Mix MixOf(int known)
    {
        var weights = new double[values.Length];
        var offsets = new double[Months];
        var all = Enumerable.Range(0, values.Length).ToArray();
        var present = all.Where(i => (known & 1 << i) != 0).ToArray();
        var total = present.Sum(i => closeness[i]);
        foreach (var i in all.Where(i => shares[i] > 0))
        {
            if (present.Contains(i))
                weights[i] += shares[i];
            foreach (var from in present.Contains(i) ? [] : present)
            {
                var part = shares[i] * closeness[from] / total;
                weights[from] += part;
                for (var month = 0; month < Months; month++)
                    offsets[month] += part * OffsetC(i, from, month);
            }
            var lapse = elevationM is null
                ? 0
                : LapseRate.CorrectionC(element, group.Stations[members[i]].ElevationM, elevationM);
            for (var month = 0; month < Months; month++)
                offsets[month] += shares[i] * lapse;
        }
        return new(weights, offsets);
    }

    private double OffsetC(int wanted, int known, int month)
    {
        var learnt = group.Offsets(element).Of(members[wanted], members[known], month);
        return double.IsNaN(learnt)
            ? LapseRate.CorrectionC(
                element, group.Stations[members[known]].ElevationM, group.Stations[members[wanted]].ElevationM)
            : learnt;
    }

    private sealed record Mix(double[] Weights, double[] OffsetsC);
}
