using System.Globalization;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Evaluation;

/// <summary>The plain words in which verdicts are told to people.</summary>
public static class Wording
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
    public static IEnumerable<string> Missing(Explanation explanation) => explanation.Deciding
        .Where(verdict => verdict.Truth == Truth.Unknown)
        .SelectMany(verdict => verdict.Findings.Where(finding => finding.Truth == Truth.Unknown).Select(Subject)
            .Concat(verdict.InventoryMissing ? ["the stand's species"] : []))
        .Distinct();

    /// <summary>A source in one line: title, year, place.</summary>
    public static string Of(RuleSource source) =>
        string.Join(", ", new[] { source.Title, source.Year?.ToString(CultureInfo.InvariantCulture), source.Where }
            .Where(part => part is not null));

    /// <summary>A finding in a line: what, value, threshold, margin, basis.</summary>
    public static string Of(Finding finding) => finding switch
    {
        SignalFinding signal => Of(signal),
        CalendarFinding calendar => Of(calendar),
        _ => throw new ArgumentException($"{finding.GetType().Name} has no words."),
    };

    /// <summary>What would make a finding hold: the limit of a signal, or the days of a range.</summary>
    public static string LimitOf(Finding finding) => finding switch
    {
        SignalFinding signal => $"{Of(signal.Compare.Signal)} {Limit(signal)}",
        CalendarFinding calendar => Range(calendar),
        _ => throw new ArgumentException($"{finding.GetType().Name} has no words."),
    };

    public static string Of(LocalDate date) => DayAndMonth.Format(date);

    private static string Subject(Finding finding) =>
        finding is SignalFinding signal ? Of(signal.Compare.Signal) : "leaf-out";

    private static string Of(SignalFinding finding)
    {
        var unit = finding.Compare.Threshold.Unit.Symbol();
        var limit = $"limit: {Limit(finding)}";
        var run = finding.DaysInARow > 1 ? $" (so far {finding.RunLength})" : "";
        return finding.Value is { } value
            ? $"{Of(finding.Compare.Signal)} {Number(value)} {unit} ({Of(finding.Basis)}); {limit}{run}"
            : $"{Of(finding.Compare.Signal)} not known; {limit}{run}";
    }

    private static string Limit(SignalFinding finding)
    {
        var (_, relation, threshold) = finding.Compare;
        var days = finding.DaysInARow > 1 ? $" for {finding.DaysInARow} days in a row" : "";
        return $"{Of(relation)} {Number(threshold.Value)} {threshold.Unit.Symbol()}{days}";
    }

    private static string Of(CalendarFinding finding)
    {
        var margin = finding.Truth switch
        {
            Truth.Unknown => "not known yet where it ends",
            _ when finding.MarginDays < 0 => $"begins in {Days(-finding.MarginDays)}",
            _ => $"{Days(finding.MarginDays)} left",
        };
        return $"{Range(finding)}; {margin}";
    }

    private static string Range(CalendarFinding finding)
    {
        var range = finding.From == finding.To ? Of(finding.From) : $"{Of(finding.From)} to {Of(finding.To)}";
        return finding.Basis == Basis.Calendar ? range : $"{range} ({OfEvent(finding.Basis)})";
    }

    private static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    private static string Days(int count) => count == 1 ? "1 day" : $"{count} days";
}
