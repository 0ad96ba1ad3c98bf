using WorkWindows.Feeds.TimeZones;

namespace WorkWindows.Feeds.Tests.TimeZones;

public class UsTimeZoneTests
{
    [Theory]
    [InlineData("Bellefonte PA", 40.9134, -77.7783, "America/New_York")]
    [InlineData("Grand Portage MN, where the data answers with Ontario", 48.00, -89.63, "America/Detroit")]
    [InlineData("Ottawa", 45.42, -75.70, null)]
    [InlineData("the Atlantic", 40.0, -60.0, null)]
    [InlineData("the South Pole", -90, 0, null)]
    public void Find_GivesAZoneOfTheUnitedStatesOrNone(
        string place, double latitudeDeg, double longitudeDeg, string? zone) =>
        Assert.Equal((place, zone), (place, UsTimeZone.Find(latitudeDeg, longitudeDeg)));
}
