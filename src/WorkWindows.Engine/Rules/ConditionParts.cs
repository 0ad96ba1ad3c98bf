using WorkWindows.Engine.Calendars;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Rules;

/// <summary>What a condition looks at.</summary>
internal static class ConditionParts
{
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

    public static bool Mentions(Condition condition, SignalKind kind) => Leaves(condition).Any(leaf => leaf switch
    {
        Compare compare => compare.Signal == kind,
        InForce alert => alert.Alert == kind,
        TotalOver total => total.Signal == kind,
        HeatSince => kind is SignalKind.MinTemperatureC or SignalKind.MaxTemperatureC,
        _ => false,
    });

    public static bool Mentions(Condition condition, SeasonEventKind kind) => Leaves(condition).OfType<InRange>()
        .Any(range => range.Range.From is EventDate from && from.Event == kind
            || range.Range.To is EventDate to && to.Event == kind);
}
