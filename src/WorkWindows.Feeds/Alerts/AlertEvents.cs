using System.Collections.Frozen;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Feeds.Alerts;

/// <summary>Which events of the US National Weather Service are of which kind.</summary>
/// <remarks>Source: docs/rules/alerts.md.</remarks>
public static class AlertEvents
{
    private static readonly FrozenDictionary<string, AlertKind> Kinds = new Dictionary<string, AlertKind>
    {
        ["Red Flag Warning"] = AlertKind.RedFlag,
        ["Fire Weather Watch"] = AlertKind.RedFlag,
        ["Extreme Wind Warning"] = AlertKind.Wind,
        ["High Wind Warning"] = AlertKind.Wind,
        ["High Wind Watch"] = AlertKind.Wind,
        ["Wind Advisory"] = AlertKind.Wind,
        ["Hurricane Warning"] = AlertKind.Wind,
        ["Hurricane Watch"] = AlertKind.Wind,
        ["Tropical Storm Warning"] = AlertKind.Wind,
        ["Tropical Storm Watch"] = AlertKind.Wind,
        ["Blizzard Warning"] = AlertKind.WinterStorm,
        ["Blizzard Watch"] = AlertKind.WinterStorm,
        ["Freezing Rain Advisory"] = AlertKind.WinterStorm,
        ["Ice Storm Warning"] = AlertKind.WinterStorm,
        ["Lake Effect Snow Advisory"] = AlertKind.WinterStorm,
        ["Lake Effect Snow Warning"] = AlertKind.WinterStorm,
        ["Lake Effect Snow Watch"] = AlertKind.WinterStorm,
        ["Snow Squall Warning"] = AlertKind.WinterStorm,
        ["Winter Storm Warning"] = AlertKind.WinterStorm,
        ["Winter Storm Watch"] = AlertKind.WinterStorm,
        ["Winter Weather Advisory"] = AlertKind.WinterStorm,
        ["Severe Thunderstorm Warning"] = AlertKind.Thunderstorm,
        ["Severe Thunderstorm Watch"] = AlertKind.Thunderstorm,
        ["Tornado Warning"] = AlertKind.Thunderstorm,
        ["Tornado Watch"] = AlertKind.Thunderstorm,
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    /// <returns>Null for an event that no rule is about, such as a flood watch.</returns>
    public static AlertKind? KindOf(string eventName) =>
        Kinds.TryGetValue(eventName, out var kind) ? kind : null;
}
