using System.Globalization;
using NodaTime.Text;
using UnitsNet;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather.Quality;

namespace WorkWindows.Service.Weather;

/// <summary>Says that a station became lastingly warmer or colder.</summary>
public static class StepWords
{
    /// <summary>To follow a step or several.</summary>
    public const string Meaning =
        "the station was moved, or its sensor changed; all of its readings stay in use, but years before and after "
        + "should be compared with care";

    private static readonly LocalDatePattern Month = LocalDatePattern.CreateWithInvariantCulture("MMMM uuuu");

    /// <summary>As in 'from about June 2003 on its minimum temperature is 3.6 °F (2.0 °C) warmer ...'.</summary>
    public static string Of(StationStep step)
    {
        var sizeF = TemperatureDelta.FromDegreesCelsius(step.SizeC).DegreesFahrenheit;
        return $"from about {Month.Format(step.From)} on its {Wording.Of(SignalSetBuilder.SignalOf(step.Element))} is "
            + $"{Size(sizeF)} °F ({Size(step.SizeC)} °C) {(step.SizeC > 0 ? "warmer" : "colder")} than before, "
            + "against the stations around";
    }

    private static string Size(double degrees) => Math.Abs(degrees).ToString("0.0", CultureInfo.InvariantCulture);
}
