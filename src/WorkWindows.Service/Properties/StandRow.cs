using System.Text.Json;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace WorkWindows.Service.Properties;

/// <summary>One species and diameter class of a parcel's inventory.</summary>
/// <param name="Species">A common name of the species catalogue.</param>
/// <param name="DbhMinIn">Lower end of the diameter class at breast height, inches, included.</param>
/// <param name="DbhMaxIn">Upper end of the diameter class, inches, excluded.</param>
/// <param name="StemsPerAcre">Stems an acre.</param>
public sealed record StandRow(string Species, double DbhMinIn, double DbhMaxIn, double StemsPerAcre)
{
    internal static StandRow Of(Feeds.Portfolio.StandRow row) =>
        new(row.Species.Name, row.DbhMinIn, row.DbhMaxIn, row.StemsPerAcre);
}

internal static class StandJson
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    public static ValueConverter<IReadOnlyList<StandRow>?, string> Converter { get; } =
        new(rows => Write(rows), json => Read(json));

    public static ValueComparer<IReadOnlyList<StandRow>?> Comparer { get; } =
        new((a, b) => Write(a) == Write(b), rows => Write(rows).GetHashCode(), rows => Read(Write(rows)));

    private static string Write(IReadOnlyList<StandRow>? rows) => JsonSerializer.Serialize(rows, Options);

    private static IReadOnlyList<StandRow>? Read(string json) =>
        JsonSerializer.Deserialize<IReadOnlyList<StandRow>>(json, Options);
}
