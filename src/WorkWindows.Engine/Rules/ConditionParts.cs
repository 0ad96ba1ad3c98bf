using WorkWindows.Engine.Calendars;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Rules;

/// <summary>What a condition looks at.</summary>
internal static class ConditionParts
{
    private static readonly SignalKind[] TemperaturesOfHeat = [SignalKind.MinTemperatureC, SignalKind.MaxTemperatureC];

    /// <summary>The comparisons, sums, ranges and alerts that a condition is made of.</summary>
    public static IEnumerable<Condition> Leaves(Condition condition) => condition switch
    {
        AllOf all => all.Parts.SelectMany(Leaves),
        AnyOf any => any.Parts.SelectMany(Leaves),
        Not not => Leaves(not.Part),
        InARow row => [row.Each],
        Latched latched => [latched.Starts, latched.Ends],
        Onset onset => Leaves(onset.First),
        _ => [condition],
    };

    /// <summary>The signals that a condition looks at; some may come twice.</summary>
    public static IEnumerable<SignalKind> Signals(Condition condition) => Leaves(condition).SelectMany(
        leaf => leaf switch
    {
        Compare compare => [compare.Signal],
        InForce alert => [alert.Alert],
        TotalOver total => [total.Signal],
        HeatSince => TemperaturesOfHeat,
        _ => Enumerable.Empty<SignalKind>(),
    });

    public static bool Mentions(Condition condition, SignalKind kind) => Signals(condition).Contains(kind);

    /// <summary>Whether what a condition says of a day may hang on days that no number in it bounds.</summary>
    public static bool RemembersWithoutBound(Condition condition) => condition switch
    {
        AllOf all => all.Parts.Any(RemembersWithoutBound),
        AnyOf any => any.Parts.Any(RemembersWithoutBound),
        Not not => RemembersWithoutBound(not.Part),
        Latched or Onset => true,
        _ => false,
    };

    public static bool Mentions(Condition condition, SeasonEventKind kind) => Events(condition).Contains(kind);

    public static bool MentionsEvents(Condition condition) => Events(condition).Any();

    private static IEnumerable<SeasonEventKind> Events(Condition condition) => Leaves(condition).OfType<InRange>()
        .SelectMany(range => new[] { range.Range.From, range.Range.To }).OfType<EventDate>().Select(date => date.Event);
}
