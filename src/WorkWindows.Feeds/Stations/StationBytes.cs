using System.Buffers.Binary;
using System.IO.Compression;

namespace WorkWindows.Feeds.Stations;

internal static class StationBytes
{
    private const int ShortestGzip = 18;

    private const string WholeGzip = "a whole gzip file: this one is cut or damaged";

    /// <returns>The file's text, unpacked where it is gzip; empty with a fault when that fails.</returns>
    public static byte[] Read(Stream stream, int largestBytes, FaultCollector faults)
    {
        var bytes = ReadAll(stream, largestBytes, faults);
        if (bytes is not [0x1F, 0x8B, ..])
            return bytes;
        if (bytes.Length < ShortestGzip)
        {
            faults.Add(null, "file", "gzip", WholeGzip);
            return [];
        }
        try
        {
            using var unpacking = new GZipStream(new MemoryStream(bytes), CompressionMode.Decompress);
            var text = ReadAll(unpacking, largestBytes, faults);
            // The reader stops quietly where a file is cut; the length that closes the file tells.
            if (!faults.Any && BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan()[^4..]) != text.Length)
                faults.Add(null, "file", "gzip", WholeGzip);
            return text;
        }
        catch (InvalidDataException)
        {
            faults.Add(null, "file", "gzip", WholeGzip);
            return [];
        }
    }

    private static byte[] ReadAll(Stream stream, int largestBytes, FaultCollector faults)
    {
        using var all = new MemoryStream();
        var buffer = new byte[81_920];
        for (int read; (read = stream.Read(buffer)) > 0;)
        {
            if (all.Length + read > largestBytes)
            {
                faults.Add(null, "file", "too large", $"at most {largestBytes / 1024 / 1024} MB of text");
                return [];
            }
            all.Write(buffer, 0, read);
        }
        return all.ToArray();
    }
}
