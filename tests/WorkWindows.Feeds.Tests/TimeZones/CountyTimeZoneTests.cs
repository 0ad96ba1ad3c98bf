using NodaTime;
using WorkWindows.Feeds.TimeZones;

namespace WorkWindows.Feeds.Tests.TimeZones;

public class CountyTimeZoneTests
{
    /// <summary>Counties and zones: 49 CFR part 71; IANA time zone database, northamerica.</summary>
    [Theory]
    [InlineData("26053", "America/Menominee")]              // Gogebic MI
    [InlineData("26071", "America/Menominee")]              // Iron MI
    [InlineData("26103", "America/Detroit")]                // Marquette MI
    [InlineData("18163", "America/Chicago")]                // Vanderburgh IN (Evansville)
    [InlineData("18097", "America/Indiana/Indianapolis")]   // Marion IN
    [InlineData("18149", "America/Indiana/Knox")]           // Starke IN
    [InlineData("55073", "America/Chicago")]                // Marathon WI
    [InlineData("27007", "America/Chicago")]                // Beltrami MN
    [InlineData("19169", "America/Chicago")]                // Story IA
    [InlineData("17019", "America/Chicago")]                // Champaign IL
    [InlineData("39169", "America/New_York")]               // Wayne OH
    [InlineData("42027", "America/New_York")]               // Centre PA
    [InlineData("36027", "America/New_York")]               // Dutchess NY
    [InlineData("25027", "America/New_York")]               // Worcester MA
    [InlineData("21067", null)]                             // Fayette KY, a divided state
    [InlineData("26", null)]
    public void Find_GivesTheZoneOfACounty(string countyFips, string? zone)
    {
        Assert.Equal(zone, CountyTimeZone.Find(countyFips));
        Assert.True(zone is null || DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) is not null);
    }
}
