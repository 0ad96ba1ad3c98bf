using NodaTime;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Rules;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tests.Weather;

public sealed class WeatherAgeTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private static readonly LocalDate Today = new(2025, 3, 1);
    private static readonly Instant Now = Instant.FromUtc(2025, 3, 1, 12, 0);

    [Theory]
    [InlineData(1, 30, "last reading Fri 28 Feb, yesterday; forecast issued within the hour")]
    [InlineData(0, 60, "last reading Sat 1 Mar, today; forecast issued 1 hour ago")]
    [InlineData(9, 48 * 60, "last reading Thu 20 Feb, 9 days ago; forecast issued 48 hours ago")]
    [InlineData(
        2, 48 * 60 + 1, "last reading Thu 27 Feb, 2 days ago; forecast issued 48 hours ago, too old to be used")]
    [InlineData(2, 72 * 60, "last reading Thu 27 Feb, 2 days ago; forecast issued 3 days ago, too old to be used")]
    [InlineData(null, null, "no reading yet; no forecast")]
    public void Words_SayHowOldItIs(int? days, int? minutes, string words) =>
        new WeatherAge(
            days is { } d ? Today.PlusDays(-d) : null,
            minutes is { } m ? Now - Duration.FromMinutes(m) : null).Words(Now, Today).ShouldBe(words);

    [Fact]
    public async Task Pages_SayHowOldTheWeatherIs()
    {
        var house = await Consultancy.OpenAsync(service);

        var week = await house.Consultant.GetStringAsync("/week");
        var season = await house.Consultant.GetStringAsync($"/tasks/{house.Task}");

        week.ShouldContain("Temperatures: no reading yet; forecast issued within the hour.");
        season.ShouldContain("no reading yet; forecast issued within the hour");
    }
}
