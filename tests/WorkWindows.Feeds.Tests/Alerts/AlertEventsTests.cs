using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Alerts;

namespace WorkWindows.Feeds.Tests.Alerts;

/// <summary>Event names as the service spells them: of the payloads it publishes, and others from memory.</summary>
public class AlertEventsTests
{
    [Theory]
    [InlineData("Red Flag Warning", AlertKind.RedFlag)]
    [InlineData("Fire Weather Watch", AlertKind.RedFlag)]
    [InlineData("High Wind Warning", AlertKind.Wind)]
    [InlineData("High Wind Watch", AlertKind.Wind)]
    [InlineData("Wind Advisory", AlertKind.Wind)]
    [InlineData("Extreme Wind Warning", AlertKind.Wind)]
    [InlineData("Tropical Storm Watch", AlertKind.Wind)]
    [InlineData("Winter Storm Warning", AlertKind.WinterStorm)]
    [InlineData("Winter Storm Watch", AlertKind.WinterStorm)]
    [InlineData("Winter Weather Advisory", AlertKind.WinterStorm)]
    [InlineData("Ice Storm Warning", AlertKind.WinterStorm)]
    [InlineData("Blizzard Warning", AlertKind.WinterStorm)]
    [InlineData("Lake Effect Snow Warning", AlertKind.WinterStorm)]
    [InlineData("Snow Squall Warning", AlertKind.WinterStorm)]
    [InlineData("Severe Thunderstorm Warning", AlertKind.Thunderstorm)]
    [InlineData("severe thunderstorm watch", AlertKind.Thunderstorm)]
    [InlineData("Tornado Warning", AlertKind.Thunderstorm)]
    [InlineData("Tornado Watch", AlertKind.Thunderstorm)]
    // On the water, or too general to close anything.
    [InlineData("Lake Wind Advisory", null)]
    [InlineData("Brisk Wind Advisory", null)]
    [InlineData("Gale Warning", null)]
    [InlineData("Heavy Freezing Spray Warning", null)]
    [InlineData("Special Weather Statement", null)]
    [InlineData("Flood Watch", null)]
    [InlineData("Heat Advisory", null)]
    [InlineData("Wind", null)]
    [InlineData("", null)]
    public void KindOf_NamesTheKind_OrNone(string eventName, AlertKind? kind) =>
        Assert.Equal(kind, AlertEvents.KindOf(eventName));
}
