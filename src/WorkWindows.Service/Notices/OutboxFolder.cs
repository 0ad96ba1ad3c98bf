using MimeKit;

namespace WorkWindows.Service.Notices;

/// <summary>
/// Writes mails as files where there is no SMTP server. A mail that is written again replaces its file.
/// </summary>
public sealed class OutboxFolder(string folder) : IMailTransport, IMailSession
{
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    public IMailSession Open() => this;

    public async Task SendAsync(MimeMessage mail)
    {
        try
        {
            Directory.CreateDirectory(folder, OwnerOnly);
            var path = Path.Combine(folder, $"{mail.MessageId}.eml");
            var unfinished = $"{path}.{Guid.NewGuid():N}.tmp";
            await using (var file = new FileStream(unfinished, FileMode.CreateNew))
            {
                await mail.WriteToAsync(file);
                file.Flush(flushToDisk: true);
            }
            File.Move(unfinished, path, overwrite: true);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new MailNotSentException($"outbox folder not writable: {fault.GetType().Name}", true, fault);
        }
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
