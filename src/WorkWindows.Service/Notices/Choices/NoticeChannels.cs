namespace WorkWindows.Service.Notices.Choices;

/// <summary>The ways in which a person is told of something.</summary>
[Flags]
public enum NoticeChannels
{
    None = 0,
    Mail = 1,

    /// <summary>A signed request to an address of the person's.</summary>
    Webhook = 2,

    /// <summary>The days appear in the person's calendar feed; nothing is sent.</summary>
    Calendar = 4,
}
