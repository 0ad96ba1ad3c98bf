using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Tests.Evaluation;

namespace WorkWindows.Engine.Tests.Rules.Packs;

/// <summary>docs/rules/deer-openers.md. No rule but the openers closes a tie-down on a mild day.</summary>
public class DeerOpenerTests
{
    [Theory]
    // Wisconsin DNR: rule seen; 2012 from the season's last day, 25 Nov
    [InlineData("WI", "2012-11-17", 2)]
    [InlineData("WI", "2023-11-18", 2)]
    [InlineData("WI", "2024-11-23", 2)]
    // Michigan DNR 2025; fixed date
    [InlineData("MI", "2025-11-15", 1)]
    // Minnesota: dates seen, rule from memory
    [InlineData("MN", "2020-11-07", 2)]
    [InlineData("MN", "2021-11-06", 2)]
    [InlineData("MN", "2025-11-08", 2)]
    // Iowa, first season: date seen, rule from memory
    [InlineData("IA", "2017-12-02", 2)]
    // Illinois: both seasons of 2016 seen, rules are a fit
    [InlineData("IL", "2016-11-18", 1)]
    [InlineData("IL", "2016-12-01", 1)]
    // Ohio gun season: seen
    [InlineData("OH", "2017-11-27", 1)]
    [InlineData("OH", "2021-11-29", 1)]
    [InlineData("OH", "2022-11-28", 1)]
    [InlineData("OH", "2023-11-27", 1)]
    [InlineData("OH", "2024-12-02", 1)]
    // Ohio December weekend: dates seen, rule is a fit
    [InlineData("OH", "2017-12-16", 2)]
    [InlineData("OH", "2021-12-18", 2)]
    [InlineData("OH", "2022-12-17", 2)]
    [InlineData("OH", "2023-12-16", 2)]
    [InlineData("OH", "2024-12-21", 2)]
    // Pennsylvania Game Commission via news
    [InlineData("PA", "2019-11-30", 2)]
    [InlineData("PA", "2021-11-27", 2)]
    [InlineData("PA", "2023-11-25", 2)]
    [InlineData("PA", "2024-11-30", 2)]
    [InlineData("PA", "2025-11-29", 2)]
    // New York: dates seen, rules are a fit; the last is the northern zone
    [InlineData("NY", "2015-11-21", 2)]
    [InlineData("NY", "2017-11-18", 2)]
    [InlineData("NY", "2023-11-18", 2)]
    [InlineData("NY", "2017-10-21", 2)]
    // Indiana: rule from memory; 2021 from the last of 16 days, 28 Nov; 2017 is the edge 11 Nov = Saturday
    [InlineData("IN", "2008-11-15", 2)]
    [InlineData("IN", "2021-11-13", 2)]
    [InlineData("IN", "2017-11-18", 2)]
    // Missouri Department of Conservation's formula; 2018 has the earliest Thanksgiving
    [InlineData("MO", "2018-11-10", 2)]
    [InlineData("MO", "2019-11-16", 2)]
    [InlineData("MO", "2021-11-13", 2)]
    [InlineData("MO", "2022-11-12", 2)]
    [InlineData("MO", "2023-11-11", 2)]
    public void State_IsClosedOnTheOpener_OnPropertiesThatAskForQuiet(string state, string first, int days) =>
        AssertClosed(state, first, days);

    [Theory]    // computed ahead by the same rules, to be confirmed with the agency each year
    [InlineData("WI", 2, "2024-11-23", "2025-11-22", "2026-11-21", "2027-11-20")]
    [InlineData("MN", 2, "2024-11-09", "2025-11-08", "2026-11-07", "2027-11-06")]
    [InlineData("IA", 2, "2024-12-07", "2025-12-06", "2026-12-05", "2027-12-04")]
    [InlineData("IL", 1, "2024-11-22", "2025-11-21", "2026-11-20", "2027-11-19")]
    [InlineData("IL", 1, "2024-12-05", "2025-12-04", "2026-12-03", "2027-12-02")]
    [InlineData("OH", 1, "2024-12-02", "2025-12-01", "2026-11-30", "2027-11-29")]
    [InlineData("PA", 2, "2024-11-30", "2025-11-29", "2026-11-28", "2027-11-27")]
    [InlineData("NY", 2, "2024-11-16", "2025-11-15", "2026-11-21", "2027-11-20")]
    [InlineData("NY", 2, "2024-10-19", "2025-10-18", "2026-10-24", "2027-10-23")]
    [InlineData("IN", 2, "2024-11-16", "2025-11-15", "2026-11-14", "2027-11-13")]
    [InlineData("MO", 2, "2024-11-16", "2025-11-15", "2026-11-14", "2027-11-13")]
    public void State_IsClosedOnTheOpener_InComingYears(string state, int days, params string[] first) =>
        Assert.All(first, date => AssertClosed(state, date, days));

    /// <summary>
    /// 520 ILCS 5/2.25 (S): firearm seasons take at most fourteen days, all between 1 November and 31 December.
    /// </summary>
    [Fact]
    public void FirearmSeasons_OfIllinois_KeepWithinTheLaw_InEveryYear()
    {
        string[] seasons = ["il.blaze-orange", "il.blaze-orange.other-seasons"];
        foreach (var year in Enumerable.Range(2016, 28))    // until the calendar repeats
        {
            var days = DaySpan.Between(new(year, 7, 1), new(year + 1, 6, 30));
            var evaluation = Shipped.Over(days, Given.Task("tie-down", "IL"));
            var rules = evaluation.Rules.Where(rule => seasons.Contains(rule.Rule.Id)).ToList();
            LocalDate[] hunted = [.. Enumerable.Range(0, days.Count)
                .Where(day => rules.Exists(rule => rule.Days[day] == Truth.Holds)).Select(day => days[day])];

            Assert.InRange(hunted.Length, 1, 14);
            Assert.True(
                hunted[0] >= new LocalDate(year, 11, 1) && hunted[^1] <= new LocalDate(year, 12, 31), $"{year}");
        }
    }

    [Fact]
    public void State_IsOpenOnTheOpener_WhereNobodyAsksForQuiet() =>
        Assert.Equal(DayState.Open, Shipped.StateOn(new(2025, 11, 15), Given.Task("tie-down", "MI")));

    [Theory]    // seasons as above; clothing rules seen in a secondary text or from memory
    [InlineData("MI", "2025-11-15", "2025-11-30")]
    [InlineData("WI", "2023-11-18", "2023-11-26")]
    [InlineData("MN", "2020-11-07", "2020-12-13")]    // with the muzzleloader season, 28 Nov-13 Dec
    [InlineData("IA", "2017-12-02", "2017-12-06")]
    [InlineData("IL", "2016-11-18", "2016-11-20")]
    [InlineData("IL", "2016-12-01", "2016-12-04")]
    [InlineData("OH", "2021-11-29", "2021-12-05")]
    [InlineData("PA", "2019-11-30", "2019-12-14")]
    [InlineData("NY", "2023-10-21", "2023-12-10")]    // both zones together
    [InlineData("IN", "2021-11-13", "2021-11-28")]
    [InlineData("MO", "2019-11-16", "2019-11-26")]
    public void BlazeOrange_IsRequiredThroughTheSeason(string state, string first, string last)
    {
        var days = DaySpan.Between(Date(first).PlusDays(-1), Date(last).PlusDays(1));
        var evaluation = Shipped.Over(days, Given.Task("tie-down", state));
        string[] said = [.. new[] { days.First, Date(first), Date(last), days.Last }.Select(day =>
            Shipped.Says($"{state.ToLowerInvariant()}.blaze-orange", evaluation, day).ToString())];

        Assert.Equal(["Fails", "Holds", "Holds", "Fails"], said);
    }

    private static void AssertClosed(string state, string first, int days)
    {
        var span = new DaySpan(Date(first).PlusDays(-1), days + 2);
        var evaluation = Shipped.Over(span, Given.Task("tie-down", state, flags: SiteFlag.QuietOnDeerOpeners));

        Assert.Equal(
            $"O{new string('C', days)}O",
            string.Concat(Enumerable.Range(0, span.Count).Select(day => evaluation[span[day]].ToString()[0])));
    }

    private static LocalDate Date(string text) => LocalDatePattern.Iso.Parse(text).Value;
}
