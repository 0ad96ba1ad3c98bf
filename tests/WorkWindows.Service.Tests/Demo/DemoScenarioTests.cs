using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Shouldly;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Demo;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tests.Demo;

public sealed class DemoScenarioTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Demo_ShowsEveryStateInTheNextTenDays_InEverySeason()
    {
        service.Clock.Reset(Instant.FromUtc(2026, 1, 20, 15, 0));
        var organization = await LoadAsync();
        var (client, _) = await service.SignInAsync(DemoOrganization.ConsultantEmail, DemoOrganization.Password);

        for (var month = 1; month <= 12; month++)
        {
            // Three weeks in which the service did not run, and then it starts.
            service.Clock.Reset(Instant.FromUtc(2026, month, 25, 15, 0));
            await using (var scope = service.Services.CreateAsyncScope())
                await scope.ServiceProvider.GetRequiredService<ForecastRound>()
                    .RunAsync(organization, CancellationToken.None);
            var week = await client.ReadAsync("/api/week");

            var tasks = week.GetProperty("tasks").EnumerateArray().ToList();
            tasks.Count.ShouldBe(14);
            var states = tasks.SelectMany(task => task.GetProperty("states").EnumerateArray())
                .Select(state => state.GetString()!).ToHashSet();
            states.ShouldBe(["open", "limited", "closed", "unknown"], ignoreOrder: true, $"in month {month}");
        }

        await using var db = service.Database.Open(organization);
        (await db.WeatherAlertReports.CountAsync(report => report.FetchedAt == service.Clock.GetCurrentInstant()))
            .ShouldBe(await db.Stations.CountAsync());
        (await db.Properties.CountAsync(), await db.Parcels.CountAsync()).ShouldBe((6, 9));
        (await db.Stations.AllAsync(station => station.Name.Contains("(invented)"))).ShouldBeTrue();
        (await db.Stations.Select(station => station.LastDay).Distinct().SingleAsync()).ShouldBe(
            new LocalDate(2026, 12, 24));
        var far = await db.Parcels.SingleAsync(parcel => parcel.Key == "cold-hollow");
        (await db.ParcelStations.AnyAsync(link => link.ParcelId == far.Id)).ShouldBeFalse();
    }

    [Fact]
    public void InventedWeather_IsTheSame_InHoweverManyStepsItIsLoaded()
    {
        var station = InventedStation.All[0];
        var (first, middle, last) = (new LocalDate(2024, 2, 1), new LocalDate(2024, 2, 29), new LocalDate(2024, 3, 31));

        station.Readings(first, last).ShouldBe(
            [.. station.Readings(first, middle), .. station.Readings(middle.PlusDays(1), last)]);
    }

    [Fact]
    public void InventedWeather_IsPlausible()
    {
        foreach (var station in InventedStation.All)
        {
            var days = station.Readings(new(2014, 9, 1), new(2024, 8, 31)).ToLookup(reading => reading.Element);
            (days[DailyElement.PrecipitationMm].Sum(reading => reading.Value) / 10).ShouldBeInRange(600, 1100);
            var snow = days[DailyElement.SnowDepthCm].ToLookup(reading => reading.Date.Month, reading => reading.Value);
            snow[7].Max().ShouldBe(0);
            snow[1].Average().ShouldBeInRange(5, 60);
            snow.SelectMany(month => month).Max().ShouldBeLessThan(150);
            days[DailyElement.MinHumidityPercent].ShouldAllBe(reading => reading.Value >= 25 && reading.Value <= 95);
        }
    }

    [Fact]
    public void InventedForecast_HasThunderAndNoSnowDepth()
    {
        var (first, last) = (new LocalDate(2024, 7, 1), new LocalDate(2024, 7, 7));

        var elements = InventedStation.All[0].Forecast(first, last).ToLookup(reading => reading.Element);

        elements.Contains(DailyElement.SnowDepthCm).ShouldBeFalse();
        elements[DailyElement.ThunderChancePercent].Count().ShouldBe(7);
        elements[DailyElement.ThunderChancePercent].Max(reading => reading.Value).ShouldBeInRange(20, 65);
    }

    /// <returns>The organization of the demo.</returns>
    private async Task<Guid> LoadAsync()
    {
        await using var scope = service.Services.CreateAsyncScope();
        (await scope.ServiceProvider.GetRequiredService<DemoOrganization>().LoadAsync(CancellationToken.None)).ShouldBeTrue();
        return scope.ServiceProvider.GetRequiredService<CurrentOrganization>().Id!.Value;
    }
}
