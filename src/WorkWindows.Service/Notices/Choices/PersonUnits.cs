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

    /// <summary>The sentence with its temperatures and areas in these units, and its days as the region of the request writes them.</summary>
    public string In(string text) => DayWords.In(AreaWords.In(TemperatureWords.In(text, Temperatures), Areas));
}
