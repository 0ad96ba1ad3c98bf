using System.Collections.Immutable;
using NodaTime;
using UnitsNet;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Phenology;

/// <summary>The last frost of a year's spring.</summary>
/// <param name="Year">The year.</param>
/// <param name="LastDay">The last day before 1 July at or below the limit, or null when there was none.</param>
public readonly record struct SpringFrost(int Year, LocalDate? LastDay)
{
    /// <summary>The last frost of each year that has an answer, ascending.</summary>
    /// <param name="minC">
    /// Daily minima, °C. Those of a station that reads whole °F are compared as read: 28 °F, kept as -2.2 °C, is at 28.
    /// </param>
    /// <param name="limitF">The limit, °F; at it counts.</param>
    /// <returns>
    /// A year without an answer is left out: one whose June is not over, or in which a night from March on and after
    /// the last frost is missing, since that may have been the last one.
    /// </returns>
    public static ImmutableArray<SpringFrost> Over(DailyColumn minC, double limitF)
    {
        var years = ImmutableArray.CreateBuilder<SpringFrost>();
        for (var year = minC.First.Year; year <= minC.Last.Year; year++)
        {
            var (last, missesLater) = Look(minC, year, limitF);
            if (!missesLater && minC.Last >= new LocalDate(year, 6, 30))
                years.Add(new(year, last));
        }
        return years.ToImmutable();
    }

    /// <summary>
    /// The last frost of a year's spring that has been seen, in a spring that may still go on; null without one.
    /// </summary>
    /// <param name="minC">Daily minima, °C, as for <see cref="Over"/>.</param>
    /// <param name="limitF">The limit, °F; at it counts.</param>
    /// <param name="year">The year.</param>
    public static LocalDate? SoFar(DailyColumn minC, double limitF, int year) => Look(minC, year, limitF).Last;

    private static (LocalDate? Last, bool MissesLater) Look(DailyColumn minC, int year, double limitF)
    {
        var limitC = Temperature.FromDegreesFahrenheit(limitF).DegreesCelsius;
        var (last, missesLater) = ((LocalDate?)null, false);
        for (var date = new LocalDate(year, 1, 1); date.Month < 7; date = date.PlusDays(1))
        {
            var nightC = minC[date];
            if (double.IsNaN(nightC))
                missesLater |= date.Month >= 3;
            else if ((minC.ReadsUsUnits ? AsRead.Restore(DailyElement.MinTemperatureC, nightC) : nightC) <= limitC)
                (last, missesLater) = (date, false);
        }
        return (last, missesLater);
    }
}
