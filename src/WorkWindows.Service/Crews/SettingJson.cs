using System.Text.Json;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace WorkWindows.Service.Crews;

/// <summary>Keeps an immutable value as JSON in one column.</summary>
internal static class SettingJson
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    public static ValueConverter<T, string> Converter<T>() where T : class =>
        new(value => JsonSerializer.Serialize(value, Options), json => JsonSerializer.Deserialize<T>(json, Options)!);

    public static ValueComparer<T> Comparer<T>() where T : class =>
        new((a, b) => Equals(a, b), value => value.GetHashCode(), value => value);
}
