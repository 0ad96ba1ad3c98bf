using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Shouldly;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;
using WorkWindows.Service.Tests.Weather;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tests.Notices;

/// <summary>
/// Minneapolis-St Paul airport, 1998 to 2014 with wind: NOAA GHCN-Daily (Menne et al. 2012, doi:10.7289/V5D21VHZ). The
/// clock stands at 1 March 2025.
/// </summary>
public sealed class ChancesInOffersTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Offer_SaysWhatPastYearsMakeOfTheDaysThatNoForecastDecides()
    {
        var organization = await service.Database.AddOrganizationAsync("Org");
        var client = await service.MachineAsync(organization);
        var owner = await service.AddPersonAsync(organization, $"o.{Guid.NewGuid():N}@example.org", Role.Landowner);
        await GivenStation.MinneapolisAsync(client, year => year is >= 1998 and <= 2014);
        var (property, parcel) = await Land.CreateAsync(client, -93.2, 44.9, "27053", "MN", "red maple");
        await client.PutAsync($"/api/parcels/{parcel}/station",
            new { temperature = GivenStation.Minneapolis, wind = GivenStation.Minneapolis });
        await Land.TaskAsync(client, parcel, "hinge-cut");
        await using var db = service.Database.Open(organization);
        (await db.Properties.SingleAsync(row => row.Id == property)).LandownerId = owner;
        var station = (await db.Stations.SingleAsync()).Id;
        var now = service.Clock.GetCurrentInstant();
        db.Add(MildDays(station, now, days: 5));
        db.Add(new WeatherAlertReport { StationId = station, FetchedAt = now });
        await db.SaveChangesAsync();

        await using var scope = service.Services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<NightlyRun>().RunAsync(organization, default);

        var text = (await db.Messages.SingleAsync(message => message.Kind == NoticeKinds.GoodToCut)).TextBody;
        text.ShouldContain("What past years say of the days that no forecast decides:");
        text.ShouldMatch(@"\* Thu 6 Mar: about \d\d? %, \d+ of 1[67] years\.");
        text.ShouldMatch(@"\* Sun 9 – Sat 22 Mar: about ([2-9]|1[0-3]) of 14 days workable, in the mean of 1[67] past years\.");
    }

    private static Service.Weather.Forecast MildDays(Guid station, Instant issuedAt, int days)
    {
        var forecast = new Service.Weather.Forecast { StationId = station, IssuedAt = issuedAt, FetchedAt = issuedAt };
        foreach (var (element, value) in new[]
        {
            (DailyElement.MinTemperatureC, -1.0), (DailyElement.MaxTemperatureC, 3), (DailyElement.WindMps, 2),
            (DailyElement.GustMps, 4), (DailyElement.PrecipitationMm, 0),
        })
        {
            for (var day = 0; day < days; day++)
                forecast.Readings.Add(new() { Element = element, Date = new LocalDate(2025, 3, 1).PlusDays(day), Value = value });
        }
        return forecast;
    }
}
