using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Chances;

/// <summary>
/// What is known of a place, continued by each of several past years: as many ways in which the season may go on.
/// </summary>
/// <remarks>Source: docs/rules/chances.md.</remarks>
public sealed record Ensemble
{
    /// <summary>The usual number of years: a climatic normal period.</summary>
    public const int UsualYears = 30;

    /// <summary>With fewer years no chances are given.</summary>
    public const int MinYears = 15;

    private Ensemble(ImmutableArray<int> years, ImmutableArray<SignalSet> members) =>
        (Years, Members, UsableYears) = (years, members, years.Length);

    /// <summary>No past years: nothing can be said of the days to come.</summary>
    public static Ensemble None { get; } = new([], []);

    /// <summary>The year behind each member.</summary>
    public ImmutableArray<int> Years { get; }

    /// <summary>The signals of each member, over the span of what is known.</summary>
    public ImmutableArray<SignalSet> Members { get; }

    /// <summary>
    /// How many past years can continue what is known: those of <see cref="Years"/>, or as many as there are when they
    /// are too few to count on.
    /// </summary>
    public int UsableYears { get; private init; }

    /// <summary>Continues what is known by the years before it that can be used, thirty at most.</summary>
    /// <param name="past">The record of the place.</param>
    /// <param name="known">The signals from it, of days past and to come.</param>
    /// <param name="forecast">The forecast in them, or null.</param>
    /// <param name="latitudeDeg">Of the place, north positive.</param>
    /// <returns>One without members when fewer than <see cref="MinYears"/> years can be used.</returns>
    public static Ensemble Of(PastWeather past, SignalSet known, Forecast? forecast, double latitudeDeg)
    {
        var season = KnownSeason.Of(past, known, forecast, null);
        var days = Math.Max(1, Period.DaysBetween(season.Last, known.Span.Last));
        var years = past.YearsBefore(season.Last, days, UsualYears);
        return years.Length < MinYears
            ? None with { UsableYears = years.Length }
            : Of(season, latitudeDeg, years);
    }

    /// <summary>What is known of a past season up to a day, continued by given years.</summary>
    /// <param name="past">The record of the place, which goes on after the day.</param>
    /// <param name="signals">What is known besides weather.</param>
    /// <param name="lastObserved">The day.</param>
    /// <param name="latitudeDeg">Of the place, north positive.</param>
    /// <param name="years">The years, however many.</param>
    internal static Ensemble AsOf(
        PastWeather past, SignalSet signals, LocalDate lastObserved, double latitudeDeg, ImmutableArray<int> years) =>
        Of(KnownSeason.Of(past, signals, null, lastObserved), latitudeDeg, years);

    /// <summary>The ensemble of one property of the place.</summary>
    /// <param name="place">The signals of the place that the ensemble continues.</param>
    /// <param name="property">
    /// Those of the property, whose leaf-out is drawn to what was seen there: each member's moves as far. A leaf-out
    /// seen is that of every member.
    /// </param>
    /// <param name="readings">What was read on the property.</param>
    public Ensemble On(SignalSet place, SignalSet property, IEnumerable<SiteReading> readings)
    {
        var read = readings.ToList();
        var leafOuts = property.Events.Where(e => e.Kind == SeasonEventKind.LeafOut).ToList();
        return new(Years, [.. Members.Select(member => member.With(leafOuts.SelectMany(Moved(member))).With(read))])
        {
            UsableYears = UsableYears,
        };

        Func<SeasonEvent, IEnumerable<SeasonEvent>> Moved(SignalSet member) => there =>
        {
            if (there.Basis == Basis.SiteObservation)
                return [there];
            return member.Event(SeasonEventKind.LeafOut, there.Date.Year) is { } here
                && place.Event(SeasonEventKind.LeafOut, there.Date.Year) is { } told
                ? [here with { Date = here.Date.PlusDays(Period.DaysBetween(told.Date, there.Date)) }]
                : [];
        };
    }

    private static Ensemble Of(KnownSeason season, double latitudeDeg, ImmutableArray<int> years) =>
        new(years, [.. years.Select(year => Member.Of(season, year, latitudeDeg))]);
}
