using System.Buffers;
using System.Text;

namespace WorkWindows.Feeds.Stations;

/// <summary>What a station id may be.</summary>
public static class StationIds
{
    public const int Length = 11;

    public const string Accepted =
        "a GHCN-Daily station id: two letters and nine letters or digits, such as USW00014922";

    internal static readonly SearchValues<byte> UpperCaseAndDigits =
        SearchValues.Create("ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"u8);

    public static bool IsId(string text) => Ascii.IsValid(text) && IsId(Encoding.ASCII.GetBytes(text));

    internal static bool IsId(ReadOnlySpan<byte> text) =>
        text.Length == Length
        && char.IsAsciiLetterUpper((char)text[0])
        && char.IsAsciiLetterUpper((char)text[1])
        && text.IndexOfAnyExcept(UpperCaseAndDigits) < 0;
}
