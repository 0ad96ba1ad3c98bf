using UnitsNet;
using UnitsNet.Units;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Notices.Choices;

/// <summary>The units that a person thinks in.</summary>
public sealed record PersonUnits(TemperatureScale Temperatures, AreaUnit Areas)
{
    /// <summary>Those that a person has chosen; °F and acres for somebody who has chosen nothing.</summary>
    public static PersonUnits Of(NoticeSettings? settings) => new(
        settings?.Celsius == true ? TemperatureScale.Celsius : TemperatureScale.Fahrenheit,
        settings?.Hectares == true ? AreaUnit.Hectare : AreaUnit.Acre);

    private bool IsCelsius => Temperatures == TemperatureScale.Celsius;

    public string DegreesUnit => IsCelsius ? "°C" : "°F";

    public string DegreeDaysUnit => IsCelsius ? "°C-days" : "°F-days";

    /// <param name="valueF">°F, or null.</param>
    /// <returns>In these units, to a tenth.</returns>
    public double? Degrees(double? valueF) => !IsCelsius ? valueF : Tenths(valueF, value => Temperature.FromDegreesFahrenheit(value).DegreesCelsius);

    /// <param name="valueF">°F-days, or null.</param>
    /// <returns>In these units, to a tenth.</returns>
    public double? DegreeDays(double? valueF) => !IsCelsius ? valueF : Tenths(valueF, value => TemperatureDelta.FromDegreesFahrenheit(value).DegreesCelsius);

    private static double? Tenths(double? value, Func<double, double> turn) =>
        value is { } known ? Math.Round(turn(known), 1) : null;

    /// <summary>
    /// The sentence with its temperatures and areas in these units, and its days as the region of the request writes them.
    /// </summary>
    public string In(string text) => DayWords.In(AreaWords.In(TemperatureWords.In(text, Temperatures), Areas));
}
