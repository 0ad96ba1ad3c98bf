using Microsoft.Extensions.Options;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Tests.Storage;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices;

public sealed class MailOptionsTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    [Theory]
    [InlineData("Mail:Port", "25", "Mail:Host is set, so Mail:From must be set to the address that notices come from.")]
    [InlineData("Mail:From", "nobody", "The From field is not a valid e-mail address.")]
    [InlineData("Mail:Port", "0", "The field Port must be between 1 and 65535.")]
    [InlineData("Mail:TimeoutSeconds", "300", "The field TimeoutSeconds must be between 1 and 240.")]
    [InlineData("Mail:Domain", "not a domain", "Mail:Domain must be a domain name such as example.org.")]
    [InlineData("Mail:User", "tom", "Mail:User is set, so Mail:Password must be set.")]
    public void Options_SayWhatIsWrong(string key, string value, string message)
    {
        using var host = new NoticeHost(
            database, new FakeClock(Now), settings: [("Mail:Host", "mail.example.org"), (key, value)]);

        var fault = Should.Throw<OptionsValidationException>(() => host.Get<IStartupValidator>().Validate());

        fault.Message.ShouldContain(message);
    }

    [Theory]
    [InlineData("Mail:Host", "mail.example.org", typeof(SmtpTransport))]
    [InlineData("Mail:Host", "", typeof(OutboxFolder))]
    public void Transport_IsTheFolder_WhenThereIsNoServer(string key, string value, Type transport)
    {
        using var host = new NoticeHost(database, new FakeClock(Now), settings: [(key, value), ("Mail:From", "notices@example.org")]);

        host.Get<IMailTransport>().ShouldBeOfType(transport);
    }

    [Fact]
    public void MessageDomain_IsThatOfTheSender_UnlessOneIsGiven()
    {
        new MailOptions { From = "notices@example.org" }.MessageDomain.ShouldBe("example.org");
        new MailOptions { From = "notices@example.org", Domain = "ids.example.org" }.MessageDomain
            .ShouldBe("ids.example.org");
        new MailOptions().MessageDomain.ShouldBe("localhost");
    }
}
