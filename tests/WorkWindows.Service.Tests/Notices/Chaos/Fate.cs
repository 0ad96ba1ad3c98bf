namespace WorkWindows.Service.Tests.Notices.Chaos;

/// <summary>What happens to one attempt to deliver a message.</summary>
internal enum Fate
{
    Accept,

    /// <summary>450 to RCPT.</summary>
    BusyMailbox,

    /// <summary>421 to RCPT, and the connection ends.</summary>
    ServiceCloses,

    /// <summary>No answer to RCPT before the sender's patience ends.</summary>
    SlowBeforeData,

    /// <summary>451 to the whole mail.</summary>
    LocalError,

    /// <summary>554 to the whole mail.</summary>
    TransactionFails,

    /// <summary>The connection is cut before the mail is taken.</summary>
    DropBeforeAcceptance,

    /// <summary>The mail is taken, and the connection is cut before the reply.</summary>
    DropAfterAcceptance,

    /// <summary>The mail is taken, and the reply comes after the sender's patience has ended.</summary>
    SlowAfterAcceptance,

    /// <summary>The worker is killed while it hands the mail over.</summary>
    KillBeforeAcceptance,

    /// <summary>The mail is taken, and the worker is killed before the reply.</summary>
    KillAfterAcceptance,

    /// <summary>The mail is taken, the reply goes out, and the worker is killed as it arrives.</summary>
    KillAtReply,

    /// <summary>The mail is taken, and another worker is killed wherever it is.</summary>
    KillAnother,

    /// <summary>The mail is taken, and the database stops before the reply.</summary>
    RestartDatabase,
}

/// <summary>
/// The fates of all messages, drawn from a seed: which they are does not depend on who sends what when.
/// </summary>
internal sealed class Fates
{
    /// <summary>How many messages have each fate at their first attempt.</summary>
    private static readonly (Fate Fate, int Messages)[] Shares =
    [
        (Fate.BusyMailbox, 25), (Fate.ServiceCloses, 10), (Fate.SlowBeforeData, 3), (Fate.LocalError, 25),
        (Fate.TransactionFails, 25), (Fate.DropBeforeAcceptance, 10), (Fate.DropAfterAcceptance, 25),
        (Fate.SlowAfterAcceptance, 3), (Fate.KillBeforeAcceptance, 2), (Fate.KillAfterAcceptance, 2),
        (Fate.KillAtReply, 2), (Fate.KillAnother, 2), (Fate.RestartDatabase, 2),
    ];

    /// <summary>One in so many is also refused at the second attempt.</summary>
    private const int RefusedTwice = 5;

    private readonly Fate[] _first;

    public Fates(int messages, int seed)
    {
        _first = [.. Shares.SelectMany(share => Enumerable.Repeat(share.Fate, share.Messages))];
        Array.Resize(ref _first, messages);
        new Random(seed).Shuffle(_first);
    }

    public static int Of(Fate fate) => Shares.Single(share => share.Fate == fate).Messages;

    /// <param name="message">The number of the message, from 0.</param>
    /// <param name="attempt">The number of the attempt that reaches the server, from 1.</param>
    public Fate Draw(int message, int attempt) => attempt switch
    {
        1 => _first[message],
        2 when message % RefusedTwice == 0 => Fate.BusyMailbox,
        _ => Fate.Accept,
    };
}
