using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using NodaTime;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Tests.Hosting;

public sealed class HostingTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Theory]
    [InlineData("/health/live")]
    [InlineData("/health/ready")]
    public async Task Health_IsHealthy_WhenTheDatabaseAnswersAndIsMigrated(string path) =>
        (await service.Anonymous().GetStringAsync(path)).ShouldBe("Healthy");

    [Fact]
    public async Task OpenApi_DescribesTimesAsStrings()
    {
        var document = await service.Anonymous().GetFromJsonAsync<JsonElement>("/openapi/v1.json");

        var instant = document.GetProperty("components").GetProperty("schemas").GetProperty("Instant");
        instant.GetProperty("type").GetString().ShouldBe("string");
        instant.GetProperty("format").GetString().ShouldBe("date-time");
    }

    [Fact]
    public async Task StyleSheet_IsServedToStrangers() =>
        (await service.Anonymous().GetAsync("/site.css")).StatusCode.ShouldBe(HttpStatusCode.OK);

    [Fact]
    public void MicrosecondClock_DropsWhatPostgresWouldDrop()
    {
        var noon = Instant.FromUtc(2025, 3, 1, 12, 0);

        new MicrosecondClock(new FakeClock(noon + Duration.FromNanoseconds(1_999))).GetCurrentInstant()
            .ShouldBe(noon + Duration.FromNanoseconds(1_000));
    }
}
