using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Chances.Verification;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Tests.Weather;
using WorkWindows.Engine.Weather;
using WorkWindows.Planning.Cases;

namespace WorkWindows.Planning.Tests.Simulation;

/// <summary>
/// Work for two crews at four cooperative stations in Illinois (NOAA GHCN-Daily) from 20 January to 10 May: the days are
/// those that the shipped rules leave workable in the record, the chances those of the other years.
/// </summary>
internal sealed class PastSeasonCase
{
    private const int SmoothedDays = 3;
    private static readonly string[] Stations = ["USC00111280", "USC00115901", "USC00115943", "USC00118740"];

    private static readonly (string Practice, SpeciesGroup Species, double Hours, double Benefit, int? DeadlineDay)[] Work =
    [
        ("overstory-felling", SpeciesGroup.RedOak, 40, 90, null), ("hinge-cut", SpeciesGroup.RedOak, 30, 120, null),
        ("hinge-cut", SpeciesGroup.Maple, 16, 40, 60), ("cleanup", SpeciesGroup.Maple, 24, 30, 75),
        ("conifer-underplanting", SpeciesGroup.Conifer, 20, 45, null),
    ];

    private readonly ImmutableArray<PastSeasons> sites;

    public PastSeasonCase(int firstYear, int lastYear)
    {
        Years = [.. Enumerable.Range(firstYear, lastYear - firstYear + 1)];
        sites = [.. Stations.Select(id => PastSeasons.Of(Site(ReferenceStations.Described(id)), ShippedPacks.Read()))];
    }

    public ImmutableArray<int> Years { get; }

    public static DateInterval Days(int year) => new(new(year, 1, 20), new(year, 5, 10));

    /// <summary>For each task of a year's case: the days on which it could be worked in truth.</summary>
    public ImmutableArray<ImmutableArray<bool>> Truth(int year) => AsAsked(year, ByPlace(year));

    public PlanCase Of(int year)
    {
        var others = Years.Where(other => other != year).Select(ByPlace).ToList();
        var length = Days(year).Length;
        var tasks = Stations.SelectMany((station, place) => Work.Select((work, index) => new PlanTask
        {
            Id = $"{station} {index} {work.Practice}",
            Place = station,
            Hours = work.Hours,
            CrewSize = 2,
            Benefit = work.Benefit * (1 + place * 0.1),
            Deadline = work.DeadlineDay is { } day ? Days(year).Start.PlusDays(day) : null,
            Chances = [.. Enumerable.Range(0, length).Select(at => Chance(others, place * Work.Length + index, at))],
        }));
        var places = Stations.Select(ReferenceStations.Described)
            .Select(station => new PlanPlace(station.Id, station.LatitudeDeg, station.LongitudeDeg)).ToArray();
        return PlanCase.Of(
            Days(year), AsAsked(year, tasks), [Crew("north", "USC00115901", 8), Crew("south", "USC00111280", 8)], [],
            TravelTimes.Of(places, [], 1, 100), [], [], [], new());
    }

    /// <summary>Owners ask in another order each year.</summary>
    private static ImmutableArray<T> AsAsked<T>(int year, IEnumerable<T> byPlace)
    {
        var asked = byPlace.ToArray();
        new Random(year).Shuffle(asked);
        return [.. asked];
    }

    private ImmutableArray<ImmutableArray<bool>> ByPlace(int year) =>
    [
        .. sites.SelectMany(site => site.Workable, (site, task) =>
            Days(year).Select(day => task[site.Days.IndexOf(day)]).ToImmutableArray()),
    ];

    private static PlanCrew Crew(string id, string @base, double hours) => new()
    {
        Id = id,
        Base = @base,
        HoursPerDay = hours,
        Members = [new() { Id = $"{id}1" }, new() { Id = $"{id}2" }],
    };

    private static double? Chance(List<ImmutableArray<ImmutableArray<bool>>> others, int task, int day)
    {
        var near = others.SelectMany(year => Enumerable.Range(day - SmoothedDays, 2 * SmoothedDays + 1)
            .Where(at => at >= 0 && at < year[task].Length).Select(at => year[task][at])).ToList();
        var share = near.Count(workable => workable) / (double)near.Count;
        return share > 0 ? share : null;
    }

    private static BacktestSite Site(WeatherStation station) => new(
        new(station.Id, station.LatitudeDeg, station.LongitudeDeg), DateTimeZoneProviders.Tzdb["America/Chicago"],
        DailySeries.Of(ReferenceStations.WithRain(station.Id), readsUsUnits: true),
        [
            .. Work.Select(work => new TaskFacts(
                work.Practice, PracticeCatalogue.Find(work.Practice)!, "IL", "17019", [work.Species], [])),
        ]);
}
