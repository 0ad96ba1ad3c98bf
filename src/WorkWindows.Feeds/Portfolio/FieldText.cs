using System.Net.Mail;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>What the texts of an import file may be.</summary>
public static class FieldText
{
    public const string Key = "a key of 1 to 60 characters without control characters";
    public const string Name = "a name of at most 200 characters without control characters";
    public const string Mail = "a mail address such as name@example.org";

    public static bool IsKey(string text) => text.Length is > 0 and <= 60 && IsPlain(text);

    public static bool IsName(string text) => text.Length is > 0 and <= 200 && IsPlain(text);

    public static bool IsMail(string text) =>
        text.Length <= 254 && IsPlain(text) && MailAddress.TryCreate(text, out var address) && address.Address == text;

    private static bool IsPlain(string text) => !text.Any(char.IsControl);
}
