using Microsoft.Extensions.Options;

namespace WorkWindows.Service.Notices;

/// <summary>Hands mails to the SMTP server.</summary>
public sealed class SmtpTransport(IOptions<MailOptions> options) : IMailTransport
{
    public IMailSession Open() => new SmtpSession(options.Value);
}
