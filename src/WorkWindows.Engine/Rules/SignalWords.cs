using WorkWindows.Engine.Rules.Reading;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Rules;

/// <summary>The keys that signals have in rule packs and wherever else people write them.</summary>
public static class SignalWords
{
    /// <summary>The signals that may be read on a property, by their keys.</summary>
    public static IReadOnlyDictionary<string, SignalKind> OfSiteReadings { get; } = Words.Signals
        .Where(word => SiteReadings.SpanOf(word.Value) is not null).ToDictionary();

    /// <summary>The key of a signal that may be read on a property.</summary>
    /// <exception cref="InvalidOperationException">It may not be read there.</exception>
    public static string OfSiteReading(SignalKind kind) => OfSiteReadings.First(word => word.Value == kind).Key;
}
