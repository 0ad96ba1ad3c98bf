using System.Buffers;
using System.Text;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>The bytes of a text file that people hand in.</summary>
internal static class Utf8Text
{
    /// <returns>The bytes without a byte order mark; with a fault if they are no UTF-8.</returns>
    public static ReadOnlyMemory<byte> Read(Stream stream, FaultCollector faults)
    {
        using var all = new MemoryStream();
        stream.CopyTo(all);
        var bytes = all.ToArray();
        if (FirstInvalid(bytes) is { } at)
        {
            faults.Add(LineAt(bytes, at), "encoding", $"byte 0x{bytes[at]:X2}",
                "UTF-8, with or without a byte order mark: save the file as UTF-8");
        }
        return bytes is [0xEF, 0xBB, 0xBF, ..] ? bytes.AsMemory(3) : bytes;
    }

    public static int LineAt(ReadOnlySpan<byte> bytes, int index) => bytes[..index].Count((byte)'\n') + 1;

    private static int? FirstInvalid(ReadOnlySpan<byte> bytes)
    {
        for (var at = 0; at < bytes.Length;)
        {
            if (Rune.DecodeFromUtf8(bytes[at..], out _, out var consumed) != OperationStatus.Done)
                return at;
            at += consumed;
        }
        return null;
    }
}
