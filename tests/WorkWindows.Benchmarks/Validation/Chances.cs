using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Chances.Verification;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Tests.Weather;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Chances;

namespace WorkWindows.Benchmarks.Validation;

/// <summary>How often chances came true, and how well they were told.</summary>
internal static class Chances
{
    private const int SeventyPercent = 7;
    private static readonly int[] ShownLeads = [1, 2, 3, 5, 7, 10, 14, 21, 30, 40, 50, 60];

    public static string Section(string images)
    {
        var sites = ReferenceStations.Cooperative.Select(ReferenceStations.Described)
            .Select(station => (
                Station: station,
                Found: Backtest.Of(Site(station), ShippedPacks.Read(), BacktestPlan.Usual)))
            .Where(site => site.Found.ByLead.Any()).ToList();
        var all = sites.Aggregate(BacktestResult.None, (sum, site) => sum + site.Found);
        Directory.CreateDirectory(images);
        File.WriteAllText(
            Path.Combine(images, "reliability.svg"),
            ReliabilityPlot.Of(all.Reliability, "How often the chances came true"));
        var worst = all.ByLead.Index().MinBy(lead => lead.Item.Skill);
        return $"""
            ## Chances

            Twelve stations of Illinois, Indiana, Iowa and Ohio, 1985–2014. As of the 1st, 11th and 21st of each month of
            each year, the chances of three tasks (hinge cut of red oak, overstory felling of maple, conifer underplanting)
            for the next {all.ByLead.Length} days, told by the other years alone, are compared with what the engine says
            of the days from the record. Climatology is the share of the same other years in which the calendar day was
            workable. The rules that need wind, humidity, thunder or snow depth are left out: these stations do not
            measure them. No forecast is used.

            | days ahead | days | Brier score | of climatology | skill | skill over smoothed climatology |
            | --- | --- | --- | --- | --- | --- |
            {string.Join('\n', ShownLeads.Select(lead => Row(lead, all.ByLead[lead - 1])))}

            The least skill of all {all.ByLead.Length} days ahead is {worst.Item.Skill:0.0000}, {worst.Index + 1} days ahead.
            Smoothed climatology is drawn towards the days around in the same way as chances are: what is left of the skill
            is what the present says. From about a month on that is nothing, and the rest is the drawing.

            ![Reliability](images/reliability.svg)

            | chance told | days | came true |
            | --- | --- | --- |
            {string.Join('\n', all.Reliability.Where(bin => bin.Days > 0).Select(bin =>
                $"| {bin.Chance:0.0 %} | {bin.Days:N0} | {bin.Share:0.0 %} |"))}

            By station: skill over all days ahead, and how often days came true that were told with 65 to 75 %.

            | station | state | skill | least skill of a day ahead | told 70 % | came true |
            | --- | --- | --- | --- | --- | --- |
            {string.Join('\n', sites.Select(site => Row(site.Station, site.Found)))}

            **Leaf-out** of the member seasons (the spread that weather makes; the error of the model is not in it), against
            the leaf-out that the record of the held-out spring gives:

            | told on | springs | between P10 and P90 | mean error of P50 | P10 to P90 |
            | --- | --- | --- | --- | --- |
            {string.Join('\n', all.LeafOut.GroupBy(spring => new AnnualDate(spring.Issued.Month, spring.Issued.Day))
                .Where(group => group.Count() >= 50).OrderBy(group => group.Key).Select(group => Row(group.Key, [.. group])))}

            Left out: {string.Join(", ", all.LeftOut)}.

            """;
    }

    private static BacktestSite Site(WeatherStation station) => new(
        new(station.Id, station.LatitudeDeg, station.LongitudeDeg), DateTimeZoneProviders.Tzdb["America/Chicago"],
        DailySeries.Of(ReferenceStations.WithRain(station.Id), readsUsUnits: true),
        [
            Task(station, "hinge-cut", SpeciesGroup.RedOak), Task(station, "overstory-felling", SpeciesGroup.Maple),
            Task(station, "conifer-underplanting", SpeciesGroup.Conifer),
        ]);

    // No rule of these states asks for a county.
    private static TaskFacts Task(WeatherStation station, string practice, SpeciesGroup species) =>
        new(practice, PracticeCatalogue.Find(practice)!, StateOf(station), "00000", [species], []);

    // The first two digits of a cooperative station's number are its state.
    private static string StateOf(WeatherStation station) => station.Id[5..7] switch
    {
        "11" => "IL",
        "12" => "IN",
        "13" => "IA",
        "33" => "OH",
        var code => throw new InvalidOperationException($"{station.Id} lies in the state {code}."),
    };

    private static string Row(int lead, Scores score) =>
        $"| {lead} | {score.Days:N0} | {score.Brier:0.0000} | {score.BrierOfClimatology:0.0000} "
        + $"| {score.Skill:0.000} | {score.SkillOverSmoothed:0.000} |";

    private static string Row(WeatherStation station, BacktestResult found)
    {
        var sum = found.ByLead.Aggregate((left, right) => left + right);
        var seventy = found.Reliability[SeventyPercent];
        return $"| {station.Name} ({station.Id}) | {StateOf(station)} | {sum.Skill:0.000} "
            + $"| {found.ByLead.Min(lead => lead.Skill):0.000} | {seventy.Days:N0} days | {seventy.Share:0 %} |";
    }

    private static string Row(AnnualDate day, ImmutableArray<LeafOutCheck> springs)
    {
        var held =
            (double)springs.Count(spring => spring.P10 <= spring.Came && spring.Came <= spring.P90) / springs.Length;
        return $"| {day.Day} {CultureName(day.Month)} | {springs.Length} | {held:0 %} "
            + $"| {springs.Average(spring => Math.Abs(Period.DaysBetween(spring.P50, spring.Came))):0.0} d "
            + $"| {springs.Average(spring => Period.DaysBetween(spring.P10, spring.P90)):0.0} d |";
    }

    private static string CultureName(int month) =>
        System.Globalization.CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(month);
}
