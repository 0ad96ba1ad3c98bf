using NodaTime;
using WorkWindows.Service.Notices.Choices;

namespace WorkWindows.Service.Notices;

/// <summary>Where a message stands.</summary>
public enum MessageState
{
    /// <summary>It is due, or will be tried again.</summary>
    Waiting,

    /// <summary>It reached nobody. It can be sent again.</summary>
    GivenUp,

    /// <summary>It is not needed any more.</summary>
    Dropped,

    /// <summary>The mail server took it, and it has not come back.</summary>
    Sent,
}

/// <param name="Id">The row.</param>
/// <param name="Kind">One of <see cref="NoticeKinds"/>.</param>
/// <param name="RecipientId">The person; null for somebody outside of the organization.</param>
/// <param name="Way">Mail or webhook.</param>
/// <param name="To">The person's name, or the address.</param>
/// <param name="Address">Where it goes.</param>
/// <param name="Subject">Its subject.</param>
/// <param name="State">Where it stands.</param>
/// <param name="GivenUp">Why it is not sent any more; null while it may be, or was.</param>
/// <param name="Reason">What hindered it last; null when nothing did.</param>
/// <param name="Attempts">Attempts since it was written or sent again, those without a mail server left out.</param>
/// <param name="CreatedAt">When it was written.</param>
/// <param name="NextAttemptAt">From when on it is tried, while it waits.</param>
/// <param name="SentAt">When the mail server took it.</param>
/// <param name="GivenUpAt">When it was given up.</param>
/// <param name="Bounce">What is known against its address; null when nothing is.</param>
public sealed record MessageView(
    Guid Id, string Kind, Guid? RecipientId, NoticeChannels Way, string To, string Address, string Subject,
    MessageState State, GivenUp? GivenUp, string? Reason, int Attempts, Instant CreatedAt, Instant? NextAttemptAt,
    Instant? SentAt, Instant? GivenUpAt, BounceView? Bounce)
{
    /// <summary>What it is about: the same of a mail and of what goes to a webhook with it.</summary>
    internal string About { get; init; } = "";
}
