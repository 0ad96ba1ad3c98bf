using System.Collections.Immutable;
using WorkWindows.Engine.Chances;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Windows;

/// <summary>The rules that count on a property and what they look at, shared by its tasks.</summary>
public sealed class PropertyWeather
{
    private readonly PointWeather _point;
    private readonly ImmutableArray<RulePack> _packs;
    private readonly SignalSet _seasons;
    private readonly ImmutableArray<SiteReading> _readings;
    private ChanceRules? _chances;

    /// <param name="point">Its weather point.</param>
    /// <param name="packs">Its packs, higher ones first.</param>
    /// <param name="leafOuts">Leaf-out as seen on it, one day a year at most.</param>
    /// <param name="readings">What else was read on it.</param>
    public PropertyWeather(
        PointWeather point, ImmutableArray<RulePack> packs, IReadOnlyCollection<SeasonEvent> leafOuts,
        ImmutableArray<SiteReading> readings)
    {
        (_point, _packs, _seasons, _readings) = (point, packs, point.On(leafOuts), readings);
        Rules = new(packs, _seasons.With(readings));
    }

    public PointRules Rules { get; }

    /// <summary>The same rules for each past year that continues what is known; made when first asked for.</summary>
    public ChanceRules Chances => _chances ??= new(
        _packs,
        Ensemble.Of(new(_point.Observed), _point.Signals, _point.Forecast, _point.LatitudeDeg)
            .On(_point.Signals, _seasons, _readings));
}

/// <summary>A planned task with all that its evaluation rests on.</summary>
/// <param name="Task">The task.</param>
/// <param name="Facts">What rules ask of it.</param>
/// <param name="Weather">The rules that count there, and what they look at.</param>
/// <param name="Parcel">Where it is.</param>
/// <param name="Source">Where its weather comes from.</param>
public sealed record TaskInput(
    TaskSummary Task, TaskFacts Facts, PropertyWeather Weather, PlacedParcel Parcel, WeatherSource Source)
{
    public EvaluatedTask Evaluated() => new(Task, Weather.Rules.Evaluate(Facts));

    /// <summary>The chances of days that lie within those that were read.</summary>
    public TaskChances ChancesOf(DaySpan days) => Weather.Chances.Of(Facts, days);
}
