using NodaTime;

namespace WorkWindows.Engine.Signals;

/// <summary>A yearly event of nature that a calendar rule may refer to.</summary>
public enum SeasonEventKind
{
    /// <summary>The buds of the canopy break.</summary>
    LeafOut,

    /// <summary>First leaf of the Extended Spring Index.</summary>
    FirstLeaf,

    /// <summary>First bloom of the Extended Spring Index.</summary>
    FirstBloom,

    /// <summary>The last night of spring at or below 28 °F.</summary>
    LastSpringFrost,
}

/// <summary>One year's event. A year whose event cannot be told has no entry, and is unknown to every rule.</summary>
/// <param name="Kind">Which event.</param>
/// <param name="Date">The day it happened or is predicted for.</param>
/// <param name="Basis">Observed or forecast temperatures, past years, or seen on the property.</param>
/// <param name="Years">Past years that stand behind a date known from climatology; 0 otherwise.</param>
/// <param name="Earliest">
/// The first day of the interval that holds the event with a chance of 80 %; null when the date is certain, or when no
/// interval was computed.
/// </param>
/// <param name="Latest">The last day of that interval, included; null exactly when the first is.</param>
public sealed record SeasonEvent(
    SeasonEventKind Kind, LocalDate Date, Basis Basis, int Years = 0,
    LocalDate? Earliest = null, LocalDate? Latest = null);
