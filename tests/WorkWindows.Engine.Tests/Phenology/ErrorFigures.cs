namespace WorkWindows.Engine.Tests.Phenology;

/// <summary>How far predictions are off, in days.</summary>
internal sealed record ErrorFigures(int Count, double MeanDays, double MeanAbsoluteDays, double RootMeanSquareDays)
{
    public static ErrorFigures Of(IReadOnlyList<double> errorsDays) => new(
        errorsDays.Count,
        errorsDays.Average(),
        errorsDays.Average(Math.Abs),
        Math.Sqrt(errorsDays.Average(error => error * error)));
}
