namespace WorkWindows.Engine.Weather.Quality;

/// <summary>A step that enough of a station's pairs share.</summary>
/// <param name="Station">The station that it is of.</param>
/// <param name="Month">The median of the breaks' months.</param>
/// <param name="SizeC">The median of their sizes, °C.</param>
/// <param name="Breaks">One of each pair that shares it.</param>
/// <param name="Share">How many they are of the pairs in which one could have been found, above one half.</param>
internal sealed record SharedStep(int Station, int Month, double SizeC, IReadOnlyList<PairBreak> Breaks, double Share)
{
    /// <summary>The larger the likelier.</summary>
    public (int, double, double) Rank => (Breaks.Count, Share, Math.Abs(SizeC));

    /// <summary>Steps around each of the breaks of a station's pairs; one may come several times.</summary>
    public static IEnumerable<SharedStep> Of(int station, IReadOnlyList<StationPair> pairs)
    {
        var all = pairs.SelectMany(pair => pair.BreaksOf(station)).ToList();
        foreach (var centre in all)
        {
            // Of each pair the nearest one, the same way.
            var shared = all
                .Where(step => Math.Abs(step.Month - centre.Month) <= LastingSteps.WithinMonths
                    && step.SizeC > 0 == centre.SizeC > 0)
                .GroupBy(step => step.Pair)
                .Select(pair => pair.MinBy(step => Math.Abs(step.Month - centre.Month))!).ToList();
            var month = (int)Median(shared.Select(step => (double)step.Month));
            var asked = pairs.Count(pair => pair.Reaches(month));
            if (shared.Count >= LastingSteps.MinOthers && shared.Count * 2 > asked)
            {
                yield return new(
                    station, month, Median(shared.Select(step => step.SizeC)), shared, (double)shared.Count / asked);
            }
        }
    }

    private static double Median(IEnumerable<double> values) => Biweight.Median([.. values.Order()]);
}
