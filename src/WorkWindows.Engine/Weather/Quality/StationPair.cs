namespace WorkWindows.Engine.Weather.Quality;

/// <summary>A break in the difference of a station from another one, °C, as many months after the first.</summary>
internal sealed record PairBreak(StationPair Pair, int Month, double SizeC);

/// <summary>The monthly differences of two stations, and the breaks in them that no step explains yet.</summary>
internal sealed class StationPair
{
    private const int Months = 12;

    private readonly int one;
    private readonly int[] known;
    private readonly List<PairBreak> left;

    private StationPair(int one, int[] known, IEnumerable<(int Month, double SizeC)> breaks)
    {
        (this.one, this.known) = (one, known);
        left = [.. breaks.Where(step => Math.Abs(step.SizeC) >= LastingSteps.MinSizeC)
            .Select(step => new PairBreak(this, step.Month, step.SizeC))];
    }

    /// <param name="one">Index of the first station.</param>
    /// <param name="means">Its monthly means, NaN where there is none.</param>
    /// <param name="others">Those of the second.</param>
    /// <param name="firstMonth">Which month of the year the first of them is, 0 to 11.</param>
    public static StationPair Of(int one, double[] means, double[] others, int firstMonth)
    {
        int[] known =
            [.. Enumerable.Range(0, means.Length).Where(month => !double.IsNaN(means[month] - others[month]))];
        var (sums, counts) = (new double[Months], new int[Months]);
        foreach (var month in known)
        {
            sums[(firstMonth + month) % Months] += means[month] - others[month];
            counts[(firstMonth + month) % Months]++;
        }
        // Without its usual difference of the season, so that what is left has one mean.
        var breaks = HomogeneityTest.Breaks([.. known.Select(month => means[month] - others[month]
            - sums[(firstMonth + month) % Months] / counts[(firstMonth + month) % Months])]);
        return new(one, known, breaks.Select(step => (known[step.At], step.Size)));
    }

    /// <summary>The breaks as they look from one of the two stations.</summary>
    public IEnumerable<PairBreak> BreaksOf(int station) =>
        left.Select(step => step with { SizeC = SignOf(station) * step.SizeC });

    /// <summary>Whether a break in a month could have been found.</summary>
    public bool Reaches(int month)
    {
        var before = known.Count(at => at < month);
        return before >= HomogeneityTest.MinValues && known.Length - before >= HomogeneityTest.MinValues;
    }

    /// <summary>Takes out the breaks that a step explains.</summary>
    public void Settle(SharedStep step) => left.RemoveAll(at =>
        SignOf(step.Station) * at.SizeC > 0 == step.SizeC > 0
        && (Math.Abs(at.Month - step.Month) <= LastingSteps.WithinMonths
            || step.Breaks.Any(used => used.Pair == this && used.Month == at.Month)));

    private int SignOf(int station) => station == one ? 1 : -1;
}
