using System.Net;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;

namespace WorkWindows.Service.Tests.Accounts;

public sealed class SignInTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task SignIn_LetsIn_AndSignOutEndsIt()
    {
        await PersonAsync("in@example.org");

        var (client, answer) = await service.SignInAsync("IN@example.org");

        answer.StatusCode.ShouldBe(HttpStatusCode.Redirect);
        answer.Headers.Location!.OriginalString.ShouldBe("/");
        (await client.GetAsync("/api/properties")).StatusCode.ShouldBe(HttpStatusCode.OK);
        await client.PostFormAsync("/sign-out", []);
        (await client.GetAsync("/api/properties")).StatusCode.ShouldBe(HttpStatusCode.Unauthorized);
    }

    [Theory]
    [InlineData("known@example.org", "not the password")]
    [InlineData("nobody@example.org", ServiceFixture.Password)]
    public async Task SignIn_SaysTheSame_WhetherAddressOrPasswordIsWrong(string email, string password)
    {
        if (email.StartsWith("known", StringComparison.Ordinal))
            await PersonAsync(email);

        var (_, answer) = await service.SignInAsync(email, password);

        (await answer.Content.ReadAsStringAsync()).ShouldContain("Mail address and password do not match.");
    }

    [Fact]
    public async Task SignIn_IsLocked_AfterFiveWrongPasswords()
    {
        await PersonAsync("locked@example.org");
        for (var attempt = 0; attempt < 5; attempt++)
            await service.SignInAsync("locked@example.org", "not the password");

        var (_, answer) = await service.SignInAsync("locked@example.org");

        answer.StatusCode.ShouldBe(HttpStatusCode.OK);
        (await answer.Content.ReadAsStringAsync()).ShouldContain("Try again in 15 minutes");
    }

    [Fact]
    public async Task SignIn_IsLetIn_AfterFourWrongPasswords()
    {
        await PersonAsync("careless@example.org");
        for (var attempt = 0; attempt < 4; attempt++)
            await service.SignInAsync("careless@example.org", "not the password");

        var (_, answer) = await service.SignInAsync("careless@example.org");

        answer.StatusCode.ShouldBe(HttpStatusCode.Redirect);
    }

    [Fact]
    public async Task SignIn_IsRefused_WithoutTheTokenOfThePage()
    {
        var answer = await service.Anonymous().PostAsync(
            "/sign-in", new FormUrlEncodedContent([new("Email", "a@example.org"), new("Password", "x")]));

        answer.StatusCode.ShouldBe(HttpStatusCode.BadRequest);
        (await answer.Content.ReadAsStringAsync()).ShouldContain("This request cannot be read");
    }

    [Fact]
    public async Task SignIn_DoesNotLeadElsewhere_WhenTheReturnAddressIsForeign()
    {
        await PersonAsync("returning@example.org");

        var answer = await service.Anonymous().PostFormAsync("/sign-in?ReturnUrl=https://elsewhere.example.org/", new()
        {
            ["Email"] = "returning@example.org",
            ["Password"] = ServiceFixture.Password,
        });

        answer.Headers.Location!.OriginalString.ShouldBe("/");
    }

    private async Task PersonAsync(string email) => await service.AddPersonAsync(
        await service.Database.AddOrganizationAsync("Org"), email, Role.Consultant);
}
