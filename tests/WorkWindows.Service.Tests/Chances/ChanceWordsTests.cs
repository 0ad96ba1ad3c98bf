using NodaTime;
using Shouldly;
using WorkWindows.Engine.Chances;
using WorkWindows.Service.Chances;
using static WorkWindows.Service.Tests.Chances.GivenChances;

namespace WorkWindows.Service.Tests.Chances;

public sealed class ChanceWordsTests
{
    /// <summary>What is known of each of 300 days, and the sentences that follow from it.</summary>
    public static TheoryData<string, SeasonChances, string[]> Cases() => new()
    {
        {
            "open today, closes in every year",
            Of(Days(300, 15), All(0), [.. Enumerable.Range(30, 30)], 24.4, Enumerable.Range(50, 30)),
            [
                "In all of them it may be worked today.",
                "It closes, for two weeks or more, after a day between Mon 6 Apr and Fri 1 May in eight years of ten, in half of them after Sat 18 Apr.",
                "Until it closes 24 workable days are left, in the mean of the years.",
                "Of the days on which the years differ, today is the likeliest: about 50 %.",
                "Leaf-out comes between Sun 26 Apr and Thu 21 May in eight years of ten, in half of them by Fri 8 May; how far the model itself is off comes on top.",
            ]
        },
        {
            "open today and for the last time",
            Of([30, .. Days(14, 0), 20, .. Days(284, 15)], All(0), All(0), 1),
            [
                "In all of them it may be worked today.",
                "It closes, for two weeks or more, after today.",
                "Until it closes 1 workable day is left, in the mean of the years.",
                "Of the days on which the years differ, Fri 20 Mar is the likeliest: about 65 %.",
            ]
        },
        {
            "closes in spring, and autumn is likelier still",
            Of([.. Days(20, 15), 20, .. Days(19, 15), .. Days(140, 0), .. Days(120, 28)], All(0), All(39), 20),
            [
                "In all of them it may be worked today.",
                "It closes, for two weeks or more, after Mon 13 Apr.",
                "Until it closes 20 workable days are left, in the mean of the years.",
                "Of the days on which the years differ, Wed 25 Mar is the likeliest: about 65 %.",
            ]
        },
        {
            "open today, closes in no year",
            Of(Days(300, 30), All(0), [], 300),
            [
                "In all of them it may be worked today.",
                "It stays open beyond Tue 29 Dec in every year, but for breaks of less than two weeks.",
                "By Tue 29 Dec 300 workable days are left, in the mean of the years.",
            ]
        },
        {
            "opens in spring of some years, stays open in some",
            Of(Days(300, 15), [.. Enumerable.Range(1, 20)], [.. Enumerable.Repeat(40, 12)], 8),
            [
                "It opens by Tue 29 Dec in 20 of 30 years: between Sat 7 Mar and Tue 24 Mar in eight years of ten, in half of them by Mon 16 Mar.",
                "It closes, for two weeks or more, in 12 of 20 years in which it opens: after Tue 14 Apr. In the others it stays open beyond Tue 29 Dec.",
                "Until it closes 8 workable days are left, in the mean of the years.",
                "Of the days on which the years differ, today is the likeliest: about 50 %.",
            ]
        },
        {
            "opens on a day of the calendar",
            Of(Days(300, 15), All(149), All(180), 0.3),
            [
                "It opens on Sat 1 Aug.",
                "It closes, for two weeks or more, after Tue 1 Sep.",
                "Until it closes less than one workable day is left, in the mean.",
                "Of the days on which the years differ, today is the likeliest: about 50 %.",
            ]
        },
        {
            "a few years do not know",
            Of(Days(300, 15), [.. Enumerable.Repeat(0, 29)], [.. Enumerable.Repeat(40, 27)], 20, null, 1, 3),
            [
                "In all of them it may be worked today.",
                "It closes, for two weeks or more, after Tue 14 Apr.",
                "Until it closes 20 workable days are left, in the mean of the years.",
                "Of the days on which the years differ, today is the likeliest: about 50 %.",
            ]
        },
        { "never opens", Of(Days(300, 0), [], [], 0), ["It opens in none of them by Tue 29 Dec."] },
        {
            "nothing is known",
            Of(Days(300, null), [], [], null, openingUnknown: 30, closingUnknown: 30),
            ["On 300 of 300 days, first today, no chance is told: too many of the years do not know gusts."]
        },
        {
            "known for a week, and not knowing is no closing",
            Of([.. Days(7, 30), .. Days(293, null)], All(0), [], null, closingUnknown: 30),
            [
                "In all of them it may be worked today.",
                "On 293 of 300 days, first on Thu 12 Mar, no chance is told: too many of the years do not know gusts.",
            ]
        },
        {
            "closed as far as is known, and not known to open",
            Of([.. Days(7, 0), .. Days(293, null)], [], [], null, openingUnknown: 30, closingUnknown: 30),
            ["On 293 of 300 days, first on Thu 12 Mar, no chance is told: too many of the years do not know gusts."]
        },
        {
            "too few years",
            TooFew(11),
            ["No chances are told: it takes 15 past years with the temperatures of the days to come, and the record has 11."]
        },
        { "no record", TooFew(0), ["No chances are told: no past year has the temperatures of the days to come."] },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Of_SaysWhatIsKnown_AndNoMore(string name, SeasonChances chances, string[] sentences) =>
        ChanceWords.Of(chances).ShouldBe(sentences, name);

    [Theory]
    [InlineData(21, 0, 0.7, "Thu 5 Mar: about 70 %, 21 of 30 years")]
    [InlineData(1, 0, 0.01, "Thu 5 Mar: about 5 %, 1 of 30 years")]
    [InlineData(29, 0, 0.99, "Thu 5 Mar: about 95 %, 29 of 30 years")]
    [InlineData(20, 2, 0.71, "Thu 5 Mar: about 70 %, 20 of 28 years, not known in 2 of 30 years")]
    [InlineData(0, 0, 0.0, "Thu 5 Mar: closed in every year")]
    [InlineData(30, 0, 1.0, "Thu 5 Mar: workable in every year")]
    [InlineData(0, 30, null, "Thu 5 Mar: chance not known, not known in 30 of 30 years")]
    public void Of_TellsADaysChance_WithTheYearsBehindIt(int workable, int unknown, double? share, string words) =>
        ChanceWords.Of(Today, new DayChance(workable, unknown, Members, share), Today).ShouldBe(words);

    [Fact]
    public void Years_NamesThem() => ChanceWords.Years(Of(Days(300, 15), [], [])).ShouldBe("30 past years (1996–2025)");

    [Fact]
    public void Bars_AreAsHighAsTheChance_AndWhatIsNotKnownIsNoZero()
    {
        var bars = ChanceBars.Of(Of([15, 0, null, null, 30], [], []))!;

        bars.Path.ShouldBe("M0 36v-18h1V36zM4 36v-36h1V36z");
        bars.NotTold.Select(run => $"{run.Fill} {run.First.Day}-{run.Last.Day}").ShouldBe(["in-doubt 7-8"]);
        bars.Label.ShouldBe("Chance of each day: half or more on 2 of 5 days, the first Thu 5 Mar; not known on 2");
        bars.Titles[4].ShouldBe("Mon 9 Mar: workable in every year");
    }

    [Fact]
    public void Bars_AreNotDrawn_WithTooFewYears() => ChanceBars.Of(TooFew(14)).ShouldBeNull();

    private static IEnumerable<int> All(int day) => Enumerable.Repeat(day, Members);
}
