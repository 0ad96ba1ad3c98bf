using MimeKit;

namespace WorkWindows.Service.Notices;

/// <summary>The way by which mails leave.</summary>
public interface IMailTransport
{
    /// <summary>Begins to send mails, one after the other; nothing is connected before the first.</summary>
    IMailSession Open();
}

/// <summary>Mails that one worker sends one after the other. A mail that fails does not hinder the next.</summary>
public interface IMailSession : IAsyncDisposable
{
    /// <summary>Hands one mail over, or throws.</summary>
    /// <exception cref="MailNotSentException">It was not taken over, or nobody can say whether it was.</exception>
    Task SendAsync(MimeMessage mail);
}

/// <summary>A mail could not be sent now.</summary>
/// <param name="reason">Why, without anything personal: it is stored and logged.</param>
/// <param name="isServerFault">Whether every other mail would fail the same way now.</param>
/// <param name="inner">What happened.</param>
public sealed class MailNotSentException(string reason, bool isServerFault, Exception? inner = null)
    : Exception(reason, inner)
{
    public bool IsServerFault { get; } = isServerFault;

    /// <summary>Whether the server was given the mail and has not said what became of it.</summary>
    public bool MayHaveArrived { get; init; }

    /// <summary>
    /// The status by which the server says that the mailbox does not exist; null when it says no such thing.
    /// </summary>
    public string? MailboxGone { get; init; }
}
