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
    /// <summary>A year with more missing days than this from 1 March to 30 June has no answer.</summary>
    public const int MaxMissingDays = 10;

    /// <summary>The last frost of each year that has an answer, ascending.</summary>
    /// <param name="minC">
    /// Daily minima, °C. Those of a station that reads whole °F are compared as read: 28 °F, kept as -2.2 °C, is at 28.
    /// </param>
    /// <param name="limitF">The limit, °F; at it counts.</param>
    /// <returns>
    /// A missing day counts as one without frost, which is why a year with more than <see cref="MaxMissingDays"/> of
    /// them in the months that matter is left out. So is a year whose June is not over.
    /// </returns>
    public static ImmutableArray<SpringFrost> Over(DailyColumn minC, double limitF)
    {
        var limitC = Temperature.FromDegreesFahrenheit(limitF).DegreesCelsius;
        var years = ImmutableArray.CreateBuilder<SpringFrost>();
        for (var year = minC.First.Year; year <= minC.Last.Year; year++)
        {
            var (missing, last) = (0, (LocalDate?)null);
            for (var date = new LocalDate(year, 1, 1); date.Month < 7; date = date.PlusDays(1))
            {
                var nightC = minC[date];
                if (double.IsNaN(nightC))
                    missing += date.Month >= 3 ? 1 : 0;
                else if ((minC.ReadsWholeFahrenheit ? WholeFahrenheit.Restore(nightC) : nightC) <= limitC)
                    last = date;
            }
            if (missing <= MaxMissingDays && minC.Last >= new LocalDate(year, 6, 30))
                years.Add(new(year, last));
        }
        return years.ToImmutable();
    }
}
