using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using WorkWindows.Engine.Stands;

namespace WorkWindows.Service.Crews;

/// <summary>Keeps an immutable value as JSON in one column.</summary>
internal static class SettingJson
{
    private static readonly JsonSerializerOptions Options =
        new(JsonSerializerDefaults.Web) { Converters = { new RangeConverter() } };

    public static ValueConverter<T, string> Converter<T>() where T : class =>
        new(value => JsonSerializer.Serialize(value, Options), json => JsonSerializer.Deserialize<T>(json, Options)!);

    public static ValueComparer<T> Comparer<T>() where T : class =>
        new((a, b) => Equals(a, b), value => value.GetHashCode(), value => value);

    /// <summary>A range as its two ends: a structure is otherwise read by its default constructor, as nothing.</summary>
    private sealed class RangeConverter : JsonConverter<ValueRange>
    {
        public override ValueRange Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            JsonSerializer.Deserialize<double[]>(ref reader, options) is [var low, var high]
                ? new(low, high)
                : throw new JsonException("A range has two ends.");

        public override void Write(Utf8JsonWriter writer, ValueRange value, JsonSerializerOptions options) =>
            JsonSerializer.Serialize(writer, new[] { value.Low, value.High }, options);
    }
}
