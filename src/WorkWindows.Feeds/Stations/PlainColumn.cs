using System.Collections.Frozen;
using System.Globalization;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds.Stations;

/// <summary>A column of a file of one's own.</summary>
internal sealed record PlainColumn(string Name, GhcnElement Element, ElementUnit Unit)
{
    private static readonly FrozenDictionary<string, PlainColumn> All = new[]
    {
        Columns("minTemperature", GhcnElement.Tmin, ("degC", ElementUnit.Celsius), ("degF", ElementUnit.Fahrenheit)),
        Columns("maxTemperature", GhcnElement.Tmax, ("degC", ElementUnit.Celsius), ("degF", ElementUnit.Fahrenheit)),
        Columns("wind", GhcnElement.Wsf2, Speeds),
        Columns("gust", GhcnElement.Wsf5, Speeds),
        Columns("precipitation", GhcnElement.Prcp, ("mm", ElementUnit.Mm), ("in", ElementUnit.Inches)),
        Columns("snowDepth", GhcnElement.Snwd,
            ("cm", ElementUnit.DepthCm), ("mm", ElementUnit.DepthMm), ("in", ElementUnit.DepthInches)),
        Columns("minHumidity", GhcnElement.Rhmn, ("%", ElementUnit.Percent)),
    }.SelectMany(columns => columns).ToFrozenDictionary(column => column.Name);

    private static (string, ElementUnit)[] Speeds =>
    [
        ("m/s", ElementUnit.Mps), ("km/h", ElementUnit.KmPerHour), ("mph", ElementUnit.Mph), ("kn", ElementUnit.Knots),
    ];

    public static string Accepted { get; } = $"one of: {string.Join(", ", All.Keys.Order(StringComparer.Ordinal))}";

    public static PlainColumn? Find(string name) => All.GetValueOrDefault(name);

    /// <returns>Null if the text is no number with a decimal point.</returns>
    public static double? Number(string text) => double.TryParse(
        text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture,
        out var number) ? number : null;

    private static IEnumerable<PlainColumn> Columns(
        string name, GhcnElement element, params (string Name, ElementUnit Unit)[] units) =>
        units.Select(unit => new PlainColumn($"{name} [{unit.Name}]", element, unit.Unit));
}
