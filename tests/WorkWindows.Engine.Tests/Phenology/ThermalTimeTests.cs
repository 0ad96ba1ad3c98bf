using NodaTime;
using WorkWindows.Engine.Phenology;

namespace WorkWindows.Engine.Tests.Phenology;

public sealed class ThermalTimeTests
{
    private static readonly ThermalTime FiveDegreeDays = new(new AnnualDate(3, 22), 4, 5);

    [Theory]
    [InlineData("6 6 5", 2)] // exactly what is needed
    [InlineData("6 6 4.9", null)]
    [InlineData("9 -30", 0)]
    [InlineData("4 -10 9", 2)] // cold days take nothing away
    [InlineData("6 NaN 9", null)] // a missing day is not a day without heat
    [InlineData("6 7 NaN", 1)] // nor does one after the day matter
    [InlineData("", null)]
    public void ReachedAt_IsTheFirstDayWithEnoughHeat(string meansC, int? day)
    {
        var means = meansC.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(double.Parse);

        Assert.Equal(day, FiveDegreeDays.ReachedAt([.. means]));
    }

    [Theory]
    // The fit of pyPhenology's test suite: highbush blueberry, Harvard Forest 1991-2001, base 0 °C, heat from day 0 on.
    [InlineData(371, 272, 5.66)] // leaf buds break
    [InlineData(501, 448, 3.29)] // flowers open
    public void ReachedAt_ReproducesPublishedFitOfBlueberry(int phase, double requiredC, double rmseDays)
    {
        var springs = ObservedSprings.Read("vaccinium_obs.csv", "vaccinium_temperature.csv", phase);
        var model = new ThermalTime(new AnnualDate(12, 31), 0, requiredC);
        var errors = ErrorFigures.Of(springs.ErrorsDays(spring => model.ReachedAt(springs.From(spring, 0))!.Value));

        Assert.Equal(48, errors.Count);
        Assert.Equal(rmseDays, errors.RootMeanSquareDays, 0.005);
    }

    // Trembling aspen seen by volunteers from 32° to 49° N, 289 first broken buds, with days up to November among them;
    // the model was fitted to one site in Massachusetts. Means and roots of squares are carried by the late records.
    [Fact]
    public void ReachedAt_PredictsAspenAcrossTheCountry_WithErrorsStated()
    {
        var springs = ObservedSprings.Read("aspen_obs.csv", "aspen_temperature.csv.gz", 371);
        var all = Aspen(springs);
        var toJune = springs.Observations.Where(seen => seen.DayOfYear <= 181);
        var spring = Aspen(springs with { Observations = [.. toJune] });

        AssertNear(new(289, 0.71, 15.29, 29.18), all.Model);
        AssertNear(new(289, 0.08, 17.88, 28.93), all.CalendarMean);
        AssertNear(new(278, 5.09, 11.55, 16.13), spring.Model);
        AssertNear(new(278, 4.11, 14.55, 19.04), spring.CalendarMean);
    }

    private static (ErrorFigures Model, ErrorFigures CalendarMean) Aspen(ObservedSprings springs)
    {
        // The mean day of Harvard Forest, 1990-2001, the place and years that the model was fitted to.
        const double MeanDayOfYear = 118.9;
        var model = BudBreak.TremblingAspen.FromMarch;
        var predicted = springs.ErrorsDays(spring =>
        {
            var start = ObservedSprings.DayOfYear(model.Start, spring.Year);
            return start + model.ReachedAt(springs.From(spring, start))!.Value;
        });
        return (ErrorFigures.Of(predicted), ErrorFigures.Of(springs.ErrorsDays(_ => MeanDayOfYear)));
    }

    private static void AssertNear(ErrorFigures expected, ErrorFigures actual)
    {
        Assert.Equal(expected.Count, actual.Count);
        Assert.Equal(expected.MeanDays, actual.MeanDays, 0.01);
        Assert.Equal(expected.MeanAbsoluteDays, actual.MeanAbsoluteDays, 0.01);
        Assert.Equal(expected.RootMeanSquareDays, actual.RootMeanSquareDays, 0.01);
    }
}
