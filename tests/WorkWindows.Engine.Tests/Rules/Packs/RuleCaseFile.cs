using System.Collections.Immutable;
using System.Globalization;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Tests.Evaluation;

namespace WorkWindows.Engine.Tests.Rules.Packs;

/// <summary>
/// Reads Cases/*.csv: rule; task; days; inputs; expected; source. The answers are written from the source, not from the
/// pack.
/// <list type="bullet">
/// <item>task: practice, state, then species, flags, a county or a place (44.2,-85.5) as wanted.</item>
/// <item>days: dates; A..B stands for the day before A, A, B and the day after B. One date with inputs of several
/// values is the first of as many days.</item>
/// <item>inputs: signal=values unit, joined by an ampersand; 70x40 is forty times 70, * is a missing value, one value
/// stands for every day. leaf-out=date is the year's leaf-out.</item>
/// <item>expected: a letter a day, of the last days where it is shorter, and repeated over the ranges of days.</item>
/// </list>
/// </summary>
internal static class RuleCaseFile
{
    private const int Fields = 6;

    private static readonly Dictionary<string, SignalKind> Signals = new()
    {
        ["min-temperature"] = SignalKind.MinTemperatureC,
        ["max-temperature"] = SignalKind.MaxTemperatureC,
        ["wind"] = SignalKind.WindMps,
        ["gust"] = SignalKind.GustMps,
        ["dark-shift"] = SignalKind.DarkShiftMinutes,
        ["light-shift"] = SignalKind.LightShiftMinutes,
        ["precipitation"] = SignalKind.PrecipitationMm,
        ["snow-depth"] = SignalKind.SnowDepthCm,
        ["frost-depth"] = SignalKind.FrostDepthCm,
        ["min-humidity"] = SignalKind.MinHumidityPercent,
        ["thunder-chance"] = SignalKind.ThunderChancePercent,
        ["heat-index"] = SignalKind.HeatIndexC,
        ["wind-chill"] = SignalKind.WindChillC,
        ["frozen-ground-index"] = SignalKind.FrozenGroundIndexC,
        ["red-flag"] = SignalKind.RedFlagAlert,
        ["wind-alert"] = SignalKind.WindAlert,
        ["winter-storm"] = SignalKind.WinterStormAlert,
        ["thunderstorm"] = SignalKind.ThunderstormAlert,
    };

    private static readonly Dictionary<string, SpeciesGroup> Species = ByKey<SpeciesGroup>();

    private static readonly Dictionary<string, SiteFlag> Flags = ByKey<SiteFlag>();

    private static readonly ImmutableArray<RuleCase> Cases =
    [
        .. Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "Rules", "Packs", "Cases"), "*.csv")
            .Order(StringComparer.Ordinal).SelectMany(Read),
    ];

    /// <summary>The cases of all files.</summary>
    public static ImmutableArray<RuleCase> All => Cases;

    private static IEnumerable<RuleCase> Read(string file) => File.ReadLines(file)
        .Select((line, index) => (Text: line, Where: $"{Path.GetFileName(file)}:{index + 1}"))
        .Where(line => line.Text.Length > 0 && line.Text[0] != '#')
        .Select(line => Case(line.Where, line.Text.Split(';', Fields)));

    private static RuleCase Case(string where, string[] fields)
    {
        if (fields is not [var rule, var task, var days, var inputs, var expected, var source] || source.Length == 0)
            throw new FormatException($"{where}: six fields, the last one a source.");
        try
        {
            var asked = Days(days, [.. inputs.Split(" & ", StringSplitOptions.RemoveEmptyEntries).Select(Input)]);
            if (asked.Length % expected.Length == 0 && days.Contains("..", StringComparison.Ordinal))
                expected = string.Concat(Enumerable.Repeat(expected, asked.Length / expected.Length));
            if (expected.Length > asked.Length || (expected.Length < asked.Length && asked[0].Signals.Span.Count == 1))
                throw new FormatException($"{asked.Length} days and {expected.Length} answers.");
            return new(where, rule, Facts(task), asked[^expected.Length..], expected);
        }
        catch (Exception e) when (e is FormatException or UnparsableValueException or KeyNotFoundException)
        {
            throw new FormatException($"{where}: {e.Message}", e);
        }
    }

    private static ImmutableArray<(SignalSet Signals, LocalDate Day)> Days(string days, List<SignalValues> inputs)
    {
        SeasonEvent[] events =
        [
            .. inputs.Where(input => input.LeafOut is not null)
                .Select(input => new SeasonEvent(SeasonEventKind.LeafOut, input.LeafOut!.Value, Basis.Observed)),
        ];
        var signals = inputs.Where(input => input.LeafOut is null).ToList();
        var length = signals.Select(input => input.Values.Length).DefaultIfEmpty(1).Max();
        if (length == 1)
            return [.. Dates(days).Select(date => (Set(new(date, 1)), date))];
        var span = new DaySpan(Date(days), length);
        var whole = Set(span);
        return [.. Enumerable.Range(0, length).Select(day => (whole, span[day]))];

        SignalSet Set(DaySpan span) => SignalSet.Of("case", span,
            signals.Select(input => Given.Signal(input.Kind, span, input.Over(span.Count))), events);
    }

    private static IEnumerable<LocalDate> Dates(string days) => days.Split(' ').SelectMany(Around);

    private static LocalDate[] Around(string text) => text.Split("..") is [var from, var to]
        ? [Date(from).PlusDays(-1), Date(from), Date(to), Date(to).PlusDays(1)]
        : [Date(text)];

    private static SignalValues Input(string text)
    {
        if (text.Split('=') is not [var name, var rest])
            throw new FormatException($"'{text}' is not name=values unit.");
        if (name == "leaf-out")
            return new(default, [], Date(rest));
        var kind = Signals[name];
        var (values, unit) = rest.Split(' ') is [var numbers, var symbol]
            ? (numbers, RuleUnits.For(kind)[symbol])
            : (rest, (RuleUnit?)null);
        return new(kind, [.. values.Split(',').SelectMany(value => Repeated(value, unit))], null);
    }

    private static IEnumerable<double> Repeated(string text, RuleUnit? unit)
    {
        var (value, times) = text.Split('x') is [var one, var count] ? (one, Whole(count)) : (text, 1);
        var inSignalUnit = value == "*" ? double.NaN : unit?.ToSignalUnit(Number(value)) ?? Number(value);
        return Enumerable.Repeat(inSignalUnit, times);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);

    private static TaskFacts Facts(string task)
    {
        var words = task.Split(' ');
        var species = words[2..].Where(Species.ContainsKey).Select(word => Species[word]).ToArray();
        var flags = words[2..].Where(Flags.ContainsKey).Select(word => Flags[word]).ToArray();
        var facts = Given.Task(words[0], words[1], species.Length == 0 ? null : species, flags);
        foreach (var word in words[2..].Where(word => !Species.ContainsKey(word) && !Flags.ContainsKey(word)))
        {
            facts = word.Split(',') is [var north, var east]
                ? facts with { Place = new(Number(north), Number(east)) }
                : word.All(char.IsAsciiDigit) ? facts with { CountyFips = word }
                : throw new FormatException($"'{word}' is neither species, flag, county nor place.");
        }
        return facts;
    }

    private static LocalDate Date(string text) => LocalDatePattern.Iso.Parse(text).Value;

    private static Dictionary<string, T> ByKey<T>()
        where T : struct, Enum =>
        Enum.GetValues<T>().ToDictionary(value => string.Concat(value.ToString().Select((c, i) =>
            char.IsUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : $"{c}")));

    private sealed record SignalValues(SignalKind Kind, double[] Values, LocalDate? LeafOut)
    {
        public double[] Over(int days) => Values.Length == days ? Values
            : Values.Length == 1 ? [.. Enumerable.Repeat(Values[0], days)]
            : throw new FormatException($"{Kind} has {Values.Length} values for {days} days.");
    }
}
