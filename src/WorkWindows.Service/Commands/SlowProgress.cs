namespace WorkWindows.Service.Commands;

/// <summary>
/// A progress bar that appears only when the work takes longer than a second, and only on a terminal.
/// </summary>
internal sealed class SlowProgress(TextWriter terminal, TimeProvider time)
{
    private const int Width = 30;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    private readonly long started = time.GetTimestamp();
    private int shownPercent = -1;

    public void Report(int done, int of, string what)
    {
        var percent = 100 * done / of;
        var isLast = done == of && shownPercent >= 0;
        if (Console.IsErrorRedirected || percent == shownPercent || (!isLast && time.GetElapsedTime(started) < Patience))
            return;
        shownPercent = percent;
        var filled = Width * done / of;
        terminal.Write(
            $"\r[{new string('#', filled)}{new string('.', Width - filled)}] {percent,3} %  {done} of {of} {what}");
        if (done == of)
            terminal.WriteLine();
    }
}
