using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Notices.Choices;

namespace WorkWindows.Service.Records;

/// <summary>A chart as charts.js draws it.</summary>
/// <param name="Days">The days of the values, counted from 1970.</param>
/// <param name="Series">The values.</param>
public sealed record ChartSpec(IReadOnlyList<int> Days, IReadOnlyList<ChartSeries> Series)
{
    private static readonly JsonSerializerOptions Web = new(JsonSerializerDefaults.Web)
    {
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    };

    public const string DegreeDays = "°F-days";

    public string Unit { get; init; } = "°F";

    /// <summary>What a value stands for: 'day', 'week' or 'month'.</summary>
    public string Step { get; init; } = "day";

    /// <summary>Pairs of series, counted from 0, the upper one first, with what lies between them shaded.</summary>
    public IReadOnlyList<IReadOnlyList<int>> Bands { get; init; } = [];

    /// <summary>Lines across.</summary>
    public IReadOnlyList<ChartLimit> Limits { get; init; } = [];

    /// <summary>Upright lines.</summary>
    public IReadOnlyList<ChartMark> Marks { get; init; } = [];

    /// <summary>Stretches marked along the foot.</summary>
    public IReadOnlyList<ChartStretch> Stretches { get; init; } = [];

    /// <summary>It stands under a strip of the same days, which name them, and does not zoom.</summary>
    public bool IsStrip { get; init; }

    /// <summary>The same in another scale; values and limits are given in °F, sums in °F-days.</summary>
    public ChartSpec In(PersonUnits units)
    {
        if (units.Temperatures == TemperatureScale.Fahrenheit)
            return this;
        Func<double?, double?> turned = Unit == DegreeDays ? units.DegreeDays : units.Degrees;
        return this with
        {
            Unit = Unit == DegreeDays ? units.DegreeDaysUnit : units.DegreesUnit,
            Series = [.. Series.Select(series => series with { Values = [.. series.Values.Select(turned)] })],
            Limits = [.. Limits.Select(limit => new ChartLimit(turned(limit.Value)!.Value, TemperatureWords.In(limit.Label, units.Temperatures)))],
        };
    }

    public string ToJson() => JsonSerializer.Serialize(this, Web);

    /// <summary>A day as charts count them.</summary>
    public static int NumberOf(LocalDate day) => Period.DaysBetween(new(1970, 1, 1), day);
}

/// <param name="Label">Its name; null where only what it bounds is drawn.</param>
/// <param name="Color">The property of the style sheet that holds its colour.</param>
/// <param name="Values">One a day; null leaves a gap.</param>
public sealed record ChartSeries(string? Label, string Color, IReadOnlyList<double?> Values)
{
    public bool IsDashed { get; init; }

    /// <summary>No line of its own.</summary>
    public bool IsHidden { get; init; }
}

/// <param name="Value">Where it stands.</param>
/// <param name="Label">What is written at it.</param>
public sealed record ChartLimit(double Value, string Label);

/// <param name="Day">The day.</param>
/// <param name="Color">The property of the style sheet that holds its colour.</param>
public sealed record ChartMark(int Day, string Color);

/// <param name="From">The first day.</param>
/// <param name="To">The last day.</param>
/// <param name="IsStrong">Drawn full, otherwise faint.</param>
public sealed record ChartStretch(int From, int To, bool IsStrong);
