namespace WorkWindows.Engine.Weather.Quality;

/// <summary>
/// Finds lasting steps of a station against those around: breaks in the monthly differences from most of them, at about
/// the same time and the same way. Source: docs/rules/weather-quality.md.
/// </summary>
internal static class LastingSteps
{
    /// <summary>Stations further away are not asked.</summary>
    public const double MaxDistanceM = 250_000;

    /// <summary>No more than the nearest are asked.</summary>
    public const int MaxOthers = 5;

    /// <summary>As many of them, and more than half, must show a step.</summary>
    public const int MinOthers = 2;

    /// <summary>No step below this is told, °C: smaller ones are common, and chance makes some.</summary>
    public const double MinSizeC = 0.75;

    /// <summary>A month with fewer days has no mean.</summary>
    public const int MinDays = 20;

    /// <summary>Breaks this many months apart are of one step: noise blurs the date of a small one.</summary>
    public const int WithinMonths = 12;

    /// <param name="values">For each station one value a day, NaN where there is none; all of the same days.</param>
    /// <param name="distanceM">The distance of two stations.</param>
    /// <param name="months">The month of each day, 0 to 11.</param>
    /// <returns>
    /// By station, then by time: the months since that of the first day, and how much warmer the station is from then
    /// on.
    /// </returns>
    public static IEnumerable<(int Station, int Month, double SizeC)> Find(
        double[][] values, Func<int, int, double> distanceM, byte[] months)
    {
        var means = values.Select(station => Means(station, months)).ToArray();
        var pairs = new Dictionary<(int, int), StationPair>();
        var ofStation = Enumerable.Range(0, values.Length).Select(station => Enumerable.Range(0, values.Length)
            .Where(other => other != station && distanceM(station, other) <= MaxDistanceM)
            .OrderBy(other => distanceM(station, other)).Take(MaxOthers)
            .Select(other => PairOf(Math.Min(station, other), Math.Max(station, other))).ToList()).ToArray();
        var found = new List<(int Station, int Month, double SizeC)>();
        // A step shows in every pair of its station: the one that most pairs share is told first, and its breaks are
        // then no sign of another station's.
        while (Enumerable.Range(0, values.Length).SelectMany(station => SharedStep.Of(station, ofStation[station]))
            .MaxBy(step => step.Rank) is { } best)
        {
            found.Add((best.Station, best.Month, best.SizeC));
            ofStation[best.Station].ForEach(pair => pair.Settle(best));
        }
        return found.OrderBy(step => (step.Station, step.Month));

        StationPair PairOf(int one, int other) => pairs.TryGetValue((one, other), out var known)
            ? known
            : pairs[(one, other)] = StationPair.Of(one, means[one], means[other], months[0]);
    }

    private static double[] Means(double[] values, byte[] months)
    {
        var means = new List<double>();
        for (var first = 0; first < values.Length;)
        {
            var end = first;
            var (sum, days) = (0.0, 0);
            for (; end < values.Length && months[end] == months[first]; end++)
            {
                if (double.IsNaN(values[end]))
                    continue;
                sum += values[end];
                days++;
            }
            means.Add(days >= MinDays ? sum / days : double.NaN);
            first = end;
        }
        return [.. means];
    }
}
