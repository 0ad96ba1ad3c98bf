using System.Buffers;

namespace WorkWindows.Feeds.Stations;

internal static class StationIds
{
    public const int Length = 11;

    public const string Accepted =
        "a GHCN-Daily station id: two letters and nine letters or digits, such as USW00014922";

    public static readonly SearchValues<byte> UpperCaseAndDigits =
        SearchValues.Create("ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"u8);

    public static bool IsId(ReadOnlySpan<byte> text) =>
        text.Length == Length
        && char.IsAsciiLetterUpper((char)text[0])
        && char.IsAsciiLetterUpper((char)text[1])
        && text.IndexOfAnyExcept(UpperCaseAndDigits) < 0;
}
