using System.Security.Cryptography;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;

namespace WorkWindows.Engine.Decisions;

/// <summary>
/// JSON whose bytes depend on nothing but its content: fixed order, no white space, shortest numbers.
/// </summary>
internal static class CanonicalJson
{
    public static byte[] Write(Action<Utf8JsonWriter> write)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer))
            write(json);
        return buffer.ToArray();
    }

    /// <summary>SHA-256 of the bytes, lower-case hexadecimal.</summary>
    public static string Hash(ReadOnlySpan<byte> content) => Convert.ToHexStringLower(SHA256.HashData(content));

    public static string Text(LocalDate date) => LocalDatePattern.Iso.Format(date);

    public static LocalDate Date(JsonElement element) => Date(element.GetString()!);

    public static LocalDate Date(string text) => LocalDatePattern.Iso.Parse(text).GetValueOrThrow();

    public static void Strings(this Utf8JsonWriter json, string name, IEnumerable<string> values)
    {
        json.WriteStartArray(name);
        foreach (var value in values)
            json.WriteStringValue(value);
        json.WriteEndArray();
    }
}
