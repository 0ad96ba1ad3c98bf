using WorkWindows.Service.Notices.Choices;

namespace WorkWindows.Service.Notices;

/// <summary>What a person was told once, and how it goes with each way in which it goes to them.</summary>
/// <param name="Ways">The mail, the webhook or both, the mail first.</param>
public sealed record MessageRow(IReadOnlyList<MessageView> Ways)
{
    /// <summary>What is told of one that is in several states, the one that asks for most first.</summary>
    private static readonly MessageState[] Order =
        [MessageState.GivenUp, MessageState.Waiting, MessageState.Sent, MessageState.Dropped];

    public MessageView First => Ways[0];

    public MessageState State => Ways.Select(way => way.State).MinBy(state => Array.IndexOf(Order, state));

    /// <returns>In the order of the messages.</returns>
    public static IReadOnlyList<MessageRow> Of(IEnumerable<MessageView> messages) =>
    [
        .. messages.GroupBy(message => (message.About, message.CreatedAt))
            .Select(ways => new MessageRow([.. ways.DistinctBy(way => way.Id).OrderBy(way => way.Way)])),
    ];

    public static string Title(MessageView way) => way.Way == NoticeChannels.Webhook ? "By webhook" : "By mail";
}
