using NodaTime;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds.Manners;

/// <summary>A reply as it came.</summary>
/// <param name="Bytes">Null where nothing has changed since the validators that were sent.</param>
/// <param name="Validators">To be sent with the next request.</param>
/// <param name="AnsweredAt">The server's time of the reply, but not after it came; whole seconds.</param>
/// <param name="FreshUntil">Until when the server has nothing else; null if it does not say.</param>
internal sealed record FeedBody(
    ReadOnlyMemory<byte>? Bytes, FeedValidators Validators, Instant AnsweredAt, Instant? FreshUntil);
