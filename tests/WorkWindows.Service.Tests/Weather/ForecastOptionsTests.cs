using System.ComponentModel.DataAnnotations;
using Shouldly;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Tests.Weather;

public sealed class ForecastOptionsTests
{
    [Theory]
    [InlineData(null, "", false)]
    [InlineData(null, "(woods.example.org, office@example.org)", true)]
    [InlineData(false, "(woods.example.org, office@example.org)", false)]
    public void IsEnabled_FollowsTheUserAgent_UnlessSaidOtherwise(bool? enabled, string userAgent, bool expected) =>
        new ForecastOptions { Enabled = enabled, UserAgent = userAgent }.IsEnabled.ShouldBe(expected);

    [Fact]
    public void Validate_AsksForAUserAgent_WhenEnabled()
    {
        var options = new ForecastOptions { Enabled = true };

        options.Validate(new ValidationContext(options)).Single().ErrorMessage.ShouldBe(
            "Forecasts:Enabled is true, so Forecasts:UserAgent must say who asks, with a mail address to write to.");
    }
}
