using NodaTime;
using WorkWindows.Feeds.TimeZones;

namespace WorkWindows.Feeds.Tests.TimeZones;

public class TimeZoneLookupTests
{
    /// <summary>
    /// Zones by the IANA time zone database (files northamerica and zone1970.tab) and 49 CFR part 71: Gogebic, Iron,
    /// Dickinson and Menominee counties of Michigan keep Central time; so do six counties round Evansville and six
    /// round Gary in Indiana. Positions of towns from memory, to about a kilometre.
    /// </summary>
    [Theory]
    [InlineData("Lansing MI", 42.7325, -84.5555, "America/Detroit")]
    [InlineData("Detroit MI", 42.3314, -83.0458, "America/Detroit")]
    [InlineData("Marquette MI", 46.5436, -87.3954, "America/Detroit")]
    [InlineData("Bessemer, Gogebic MI", 46.4813, -90.0529, "America/Menominee")]
    [InlineData("Iron Mountain, Dickinson MI", 45.8202, -88.0659, "America/Menominee")]
    [InlineData("Menominee MI", 45.1078, -87.6143, "America/Menominee")]
    [InlineData("Wausau WI", 44.9591, -89.6301, "America/Chicago")]
    [InlineData("Bemidji MN", 47.4716, -94.8827, "America/Chicago")]
    [InlineData("Ames IA", 42.0308, -93.6319, "America/Chicago")]
    [InlineData("Urbana IL", 40.1106, -88.2073, "America/Chicago")]
    [InlineData("Evansville IN", 37.9716, -87.5711, "America/Chicago")]
    [InlineData("Gary IN", 41.5934, -87.3464, "America/Chicago")]
    [InlineData("Indianapolis IN", 39.7684, -86.1581, "America/Indiana/Indianapolis")]
    [InlineData("Knox IN", 41.2959, -86.6250, "America/Indiana/Knox")]
    [InlineData("Vincennes IN", 38.6773, -87.5286, "America/Indiana/Vincennes")]
    [InlineData("Wooster OH", 40.8051, -81.9351, "America/New_York")]
    [InlineData("State College PA", 40.7934, -77.8600, "America/New_York")]
    [InlineData("Millbrook NY", 41.7851, -73.6940, "America/New_York")]
    [InlineData("Petersham MA", 42.4875, -72.1870, "America/New_York")]
    [InlineData("Honolulu HI", 21.3069, -157.8583, "Pacific/Honolulu")]
    public void Find_GivesTheZoneOfATown(string town, double latitudeDeg, double longitudeDeg, string zone) =>
        Assert.Equal((town, zone), (town, TimeZoneLookup.Find(latitudeDeg, longitudeDeg)));

    [Theory]
    [InlineData(40.0, -60.0, "Etc/GMT+4")]      // 60° west of Greenwich is four hours behind
    [InlineData(0.0, 0.0, "Etc/GMT")]
    public void Find_GivesTheNauticalZone_OnTheHighSea(double latitudeDeg, double longitudeDeg, string zone) =>
        Assert.Equal(zone, TimeZoneLookup.Find(latitudeDeg, longitudeDeg));

    [Theory]
    [InlineData(90, 0)]
    [InlineData(-90, 0)]
    [InlineData(0, 180)]
    [InlineData(0, -180)]
    [InlineData(-90, 180)]
    public void Find_AnswersAtTheEdgesOfTheWorld(double latitudeDeg, double longitudeDeg) =>
        Assert.NotNull(DateTimeZoneProviders.Tzdb.GetZoneOrNull(TimeZoneLookup.Find(latitudeDeg, longitudeDeg)));

    [Theory]
    [InlineData(90.1, 0)]
    [InlineData(0, -180.1)]
    [InlineData(double.NaN, 0)]
    public void Find_RefusesPositionsOffTheGlobe(double latitudeDeg, double longitudeDeg) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => TimeZoneLookup.Find(latitudeDeg, longitudeDeg));
}
