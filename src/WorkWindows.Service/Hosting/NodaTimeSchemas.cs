using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;
using NodaTime;

namespace WorkWindows.Service.Hosting;

/// <summary>Describes dates and times as the strings they are on the wire.</summary>
internal static class NodaTimeSchemas
{
    private static readonly Dictionary<Type, string> Formats = new()
    {
        [typeof(LocalDate)] = "date",
        [typeof(LocalTime)] = "time",
        [typeof(Instant)] = "date-time",
    };

    public static Task DescribeAsync(
        OpenApiSchema schema, OpenApiSchemaTransformerContext context, CancellationToken cancellation)
    {
        var type = context.JsonTypeInfo.Type;
        if (Formats.TryGetValue(Nullable.GetUnderlyingType(type) ?? type, out var format))
        {
            schema.Type = JsonSchemaType.String | ((schema.Type ?? default) & JsonSchemaType.Null);
            schema.Format = format;
            schema.Properties = null;
        }

        return Task.CompletedTask;
    }
}
