using System.Collections.Frozen;
using System.Globalization;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Evaluation;

/// <summary>The plain words in which verdicts are told to people.</summary>
public static partial class Wording
{
    private static readonly LocalDatePattern DayAndMonth = LocalDatePattern.CreateWithInvariantCulture("d MMM uuuu");

    public static string Of(DayState state) => state switch
    {
        DayState.Open => "open",
        DayState.Limited => "limited",
        DayState.Unknown => "unknown",
        DayState.Closed => "closed",
    };

    public static string Of(Basis basis) => basis switch
    {
        Basis.Missing => "no value",
        Basis.Observed => "observed",
        Basis.Forecast => "forecast",
        Basis.Climatology => "expected from past years",
        Basis.Calendar => "calendar",
        Basis.SiteObservation => "seen on the property",
        Basis.Alert => "weather service",
        Basis.Interpolated => "worked out from stations around",
    };

    /// <summary>How the date of an event is known: what was observed are the temperatures, not the event.</summary>
    public static string OfEvent(Basis basis) => basis switch
    {
        Basis.Observed => "predicted from observed temperatures",
        Basis.Forecast => "predicted with the forecast",
        _ => Of(basis),
    };

    public static string Of(Authority authority) => authority switch
    {
        Authority.Regulation => "regulation",
        Authority.AgencyGuideline => "agency guideline",
        Authority.PublishedStudy => "published study",
        Authority.CommonPractice => "common practice",
    };

    public static string Of(SignalKind signal) => signal switch
    {
        SignalKind.MinTemperatureC => "minimum temperature",
        SignalKind.MaxTemperatureC => "maximum temperature",
        SignalKind.WindMps => "sustained wind",
        SignalKind.GustMps => "gusts",
        SignalKind.DarkShiftMinutes => "part of the shift in the dark",
        SignalKind.LightShiftMinutes => "part of the shift in daylight",
        SignalKind.PrecipitationMm => "rain and melted snow",
        SignalKind.SnowDepthCm => "snow depth",
        SignalKind.MinHumidityPercent => "lowest humidity",
        SignalKind.ThunderChancePercent => "chance of thunder",
        SignalKind.HeatIndexC => "heat index",
        SignalKind.WindChillC => "wind chill",
        SignalKind.FrozenGroundIndexC => "frozen ground index",
        SignalKind.FrostDepthCm => "frost depth",
        SignalKind.RedFlagAlert => "red flag alert",
        SignalKind.WindAlert => "wind alert",
        SignalKind.WinterStormAlert => "winter storm alert",
        SignalKind.ThunderstormAlert => "thunderstorm alert",
    };

    public static string Of(Relation relation) => relation switch
    {
        Relation.Below => "below",
        Relation.AtMost => "at most",
        Relation.AtLeast => "at least",
        Relation.Above => "above",
    };

    /// <summary>What must become known before an unknown day can be decided, such as 'gusts'; each once.</summary>
    public static IEnumerable<string> Missing(Explanation explanation)
    {
        var missing = explanation.Deciding
            .Where(verdict => verdict.Truth == Truth.Unknown)
            .SelectMany(
                verdict => Missing(verdict).Select(Subject).Concat(verdict.ScopeInDoubt ? [Doubted(verdict)] : []))
            .Distinct().ToArray();
        // What is worked out from a missing reading comes with it.
        return missing.Where(what => !WorkedOutFrom.TryGetValue(what, out var reading) || !missing.Contains(reading));
    }

    /// <summary>
    /// That something may have come before is only worth saying where the day's own readings are known.
    /// </summary>
    private static IEnumerable<Finding> Missing(RuleVerdict verdict)
    {
        var missing = verdict.Findings.Where(finding => finding.Truth == Truth.Unknown).ToArray();
        return missing.All(finding => finding is OnsetFinding)
            ? missing
            : missing.Where(finding => finding is not OnsetFinding);
    }

    /// <summary>What nobody has said of a parcel that a rule asks for.</summary>
    public static string Doubted(RuleVerdict verdict) =>
        verdict.InventoryMissing ? "the stand's species"
        : verdict.Rule.Scope.Area is not null ? "where the parcel lies"
        : "who plans the task";

    private static readonly FrozenDictionary<string, string> WorkedOutFrom = new Dictionary<string, string>
    {
        [Of(SignalKind.HeatIndexC)] = Of(SignalKind.MaxTemperatureC),
        [Of(SignalKind.WindChillC)] = Of(SignalKind.MinTemperatureC),
    }.ToFrozenDictionary();

    /// <summary>A source in one line: title, year, place.</summary>
    public static string Of(RuleSource source) =>
        string.Join(", ", new[] { source.Title, source.Year?.ToString(CultureInfo.InvariantCulture), source.Where }
            .Where(part => part is not null));

    public static string Of(LocalDate date) => DayAndMonth.Format(date);

    public static string Of(SeasonEventKind kind) => kind switch
    {
        SeasonEventKind.LeafOut => "leaf-out",
        SeasonEventKind.FirstLeaf => "first leaf of the spring index",
        SeasonEventKind.FirstBloom => "first bloom of the spring index",
        SeasonEventKind.LastSpringFrost => "last frost of spring",
    };

    public static string Of(SpeciesGroup group) => group switch
    {
        SpeciesGroup.RedOak => "red oak",
        SpeciesGroup.WhiteOak => "white oak",
        SpeciesGroup.Maple => "maple",
        SpeciesGroup.Aspen => "aspen",
        SpeciesGroup.Ash => "ash",
        SpeciesGroup.Hickory => "hickory",
        SpeciesGroup.Cherry => "cherry",
        SpeciesGroup.OtherHardwood => "other hardwoods",
        SpeciesGroup.Conifer => "conifers",
    };

    public static string Of(Effect effect) => effect switch
    {
        Effect.Closes => "closes",
        Effect.Limits => "limits",
        Effect.Favours => "favours",
        Effect.Requires => "requires",
        Effect.Lifts => "lifts",
    };

    public static string Of(DegreeDayMethod method) => method switch
    {
        DegreeDayMethod.SimpleAverage => "simple average",
        DegreeDayMethod.ClippedAverage => "average of clipped values",
        DegreeDayMethod.SingleTriangle => "single triangle",
        DegreeDayMethod.DoubleTriangle => "double triangle",
        DegreeDayMethod.SingleSine => "single sine",
        DegreeDayMethod.DoubleSine => "double sine",
    };
}
