using System.Collections.Immutable;

namespace WorkWindows.Engine.Phenology;

/// <summary>The regressions of one plant of the Extended Spring Index. Source: docs/rules/spring-index.md.</summary>
internal sealed record SpringPlant(
    double LeafPerDay, double LeafPerSynopticEvent, double LeafPerHeat3, double LeafPerHeat5To7, double BloomPerDay,
    double BloomPerHeat, bool LeafsOnTheDayAfter = false)
{
    private const double EnoughScore = 999.5;

    // °F hours of three days that stand for the warm air ahead of a front.
    private const double SynopticEventHeatF = 637;

    /// <summary>Lilac 'Red Rothomagensis', honeysuckles 'Arnold Red' and 'Zabeli'.</summary>
    public static ImmutableArray<SpringPlant> All { get; } =
    [
        new(3.306, 13.878, 0.201, 0.153, -23.934, 0.116),
        new(4.266, 20.899, 0, 0.248, -24.825, 0.127, LeafsOnTheDayAfter: true),
        new(2.802, 21.433, 0.266, 0, -11.368, 0.096),
    ];

    /// <summary>The day of the year on which the plant leafs, or null when the days do not suffice.</summary>
    /// <param name="dailyHeatF">Heat from 1 January on, °F hours; null for a day that is left out.</param>
    public int? LeafDay(ReadOnlySpan<double?> dailyHeatF)
    {
        // Today first, then the days before it.
        Span<double> lags = stackalloc double[8];
        var synopticEvents = 0;
        for (var day = 0; day < dailyHeatF.Length; day++)
        {
            if (dailyHeatF[day] is not { } heat)
                continue;
            lags[..^1].CopyTo(lags[1..]);
            lags[0] = heat;
            if (day == 0)
                lags[1] = lags[2] = heat;
            var heat3 = lags[0] + lags[1] + lags[2];
            var heat5To7 = lags[5] + lags[6] + lags[7];
            if (heat3 >= SynopticEventHeatF)
                synopticEvents++;
            var score = LeafPerDay * day + LeafPerSynopticEvent * synopticEvents + LeafPerHeat3 * heat3
                + LeafPerHeat5To7 * heat5To7;
            if (score >= EnoughScore)
                return day + (LeafsOnTheDayAfter ? 2 : 1);
        }
        return null;
    }

    /// <summary>The day of the year on which the plant blooms, or null when the days do not suffice.</summary>
    /// <param name="dailyHeatF">Heat from 1 January on, °F hours; null for a day that is left out.</param>
    /// <param name="leafDay">The day of the year on which it leafed, the first whose heat counts.</param>
    public int? BloomDay(ReadOnlySpan<double?> dailyHeatF, int leafDay)
    {
        var sum = 0.0;
        for (var day = leafDay - 1; day < dailyHeatF.Length; day++)
        {
            if (dailyHeatF[day] is not { } heat)
                continue;
            sum += heat;
            if (BloomPerDay * (day + 1 - leafDay) + BloomPerHeat * sum >= EnoughScore)
                return day + 1;
        }
        return null;
    }
}
