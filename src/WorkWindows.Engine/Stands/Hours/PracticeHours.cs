using WorkWindows.Engine.Practices;

namespace WorkWindows.Engine.Stands.Hours;

/// <summary>How long work takes, hours of one person, and where that comes from.</summary>
/// <param name="PersonHours">Least and most.</param>
/// <param name="Source">Where it is published, or that it is not.</param>
public sealed record HoursEstimate(ValueRange PersonHours, string Source)
{
    public double Middle => (PersonHours.Low + PersonHours.High) / 2;
}

/// <summary>Hours of work from its quantity.</summary>
/// <remarks>Source: docs/rules/hours.md.</remarks>
public static class PracticeHours
{
    private const string Usual = "common practice, no source";
    private const double HoursPerDay = 8;
    private const double MinutesPerHour = 60;

    /// <summary>The diameter that stands for trees of the overstory where nobody measured them, inches.</summary>
    private const double OverstoryDbhIn = 14;

    /// <summary>The diameter of stems that are hinged, inches.</summary>
    private const double HingeDbhIn = 6;

    /// <param name="practice">The practice.</param>
    /// <param name="quantity">How much; above 0.</param>
    /// <param name="unit">acres, stems, feet, trees or hours.</param>
    /// <returns>Null where nothing is known of the practice in this unit.</returns>
    public static HoursEstimate? Of(Practice practice, double quantity, string unit) => (practice.Id, unit) switch
    {
        (_, "hours") => new(ValueRange.Of(quantity), "as planned"),
        ("hinge-cut", "stems" or "trees") => Cutting(quantity, HingeDbhIn),
        ("overstory-felling", "stems" or "trees") => Cutting(quantity, OverstoryDbhIn),
        ("conifer-underplanting", "trees") => new(
            WorkRates.PlantingDays(quantity) * HoursPerDay, "University of Minnesota, Woodland Stewardship, chapter 4"),
        ("hinge-cut" or "overstory-felling", "acres") => PerUnit(quantity, 6, 20),
        ("re-cut", "stems" or "trees") => PerUnit(quantity, 2 / MinutesPerHour, 5 / MinutesPerHour),
        ("re-cut", "acres") => PerUnit(quantity, 4, 12),
        ("tie-down", "stems" or "trees") => PerUnit(quantity, 2 / MinutesPerHour, 6 / MinutesPerHour),
        ("tie-down", "acres") => PerUnit(quantity, 4, 12),
        ("cleanup", "acres") => PerUnit(quantity, 4, 12),
        ("trail-opening", "feet") => PerUnit(quantity, 0.0025, 0.01),
        ("timber-harvest", "acres") => PerUnit(quantity, 10, 40),
        ("girdling", "stems" or "trees") => PerUnit(quantity, 3 / MinutesPerHour, 8 / MinutesPerHour),
        ("frill-herbicide", "stems" or "trees") => PerUnit(quantity, 1 / MinutesPerHour, 4 / MinutesPerHour),
        ("conifer-underplanting", "acres") => PerUnit(quantity, 4, 12),
        ("prescribed-burn", "acres") => PerUnit(quantity, 1, 4),
        _ => null,
    };

    private static HoursEstimate Cutting(double stems, double dbhIn) =>
        new(WorkRates.CuttingPersonHours([(dbhIn, stems)]), WorkRates.RateFor(dbhIn).Source);

    private static HoursEstimate PerUnit(double quantity, double low, double high) =>
        new(new(quantity * low, quantity * high), Usual);
}
