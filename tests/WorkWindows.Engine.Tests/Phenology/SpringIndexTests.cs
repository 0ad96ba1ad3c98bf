using WorkWindows.Engine.Phenology;
using static WorkWindows.Engine.Phenology.SpringIndexVariant;
using static WorkWindows.Engine.Tests.Phenology.SpringStationYears;

namespace WorkWindows.Engine.Tests.Phenology;

public sealed class SpringIndexTests
{
    private const double JacksonvilleDeg = 39.735;
    private const double UrbanaDeg = 40.084;

    [Theory]
    // The means are the toolbox's own output (S), the plants' days and the corrected variant computed (C).
    [InlineData(Jacksonville1975MaxF, Jacksonville1975MinF, JacksonvilleDeg, Toolbox2015,
        "leaf 101 [108 89 107], bloom 125 [126 123 126]")]
    [InlineData(Jacksonville1975MaxF, Jacksonville1975MinF, JacksonvilleDeg, Corrected,
        "leaf 107 [108 105 107], bloom 125 [126 124 126]")]
    [InlineData(Urbana1990MaxF, Urbana1990MinF, UrbanaDeg, Toolbox2015,
        "leaf 73 [72 75 71], bloom 116 [117 118 114]")]
    [InlineData(Urbana1990MaxF, Urbana1990MinF, UrbanaDeg, Corrected,
        "leaf 73 [72 75 71], bloom 116 [117 118 114]")]
    public void Over_MatchesPublishedStationYears(
        string maxF, string minF, double latitudeDeg, SpringIndexVariant variant, string dates) =>
        Assert.Equal(dates, Text(SpringIndex.Over(Read(maxF), Read(minF), latitudeDeg, variant)));

    [Theory]
    // Computed (C), latitude 42° N: steady 60/40 °F, and 32/12 °F rising by 0.4 °F a day.
    [InlineData(60, 40, 0, "leaf 30 [33 29 28], bloom 63 [69 61 60]")]
    [InlineData(32, 12, 0.4, "leaf 70 [71 70 70], bloom 93 [94 91 93]")]
    public void Over_MatchesComputedRuns(double maxF, double minF, double risePerDayF, string dates) => Assert.Equal(
        dates, Text(SpringIndex.Over(Run(maxF, risePerDayF, 240), Run(minF, risePerDayF, 240), 42)));

    [Theory]
    [InlineData(29, "leaf  [ 29 28], bloom  [  ]")]
    [InlineData(33, "leaf 30 [33 29 28], bloom  [  ]")]
    [InlineData(69, "leaf 30 [33 29 28], bloom 63 [69 61 60]")]
    public void Over_HasOnlyWhatTheDaysReach(int days, string dates)
    {
        var (maxF, minF) = (Run(60, 0, 240), Run(40, 0, 240));
        maxF[days] = double.NaN;

        Assert.Equal(dates, Text(SpringIndex.Over(maxF, minF, 42)));
        Assert.Equal(dates, Text(SpringIndex.Over(maxF.AsSpan(0, days), minF.AsSpan(0, days), 42)));
    }

    [Fact]
    public void Over_LooksAtNothingAfterDay240()
    {
        var (maxF, minF) = (Run(20, 0, 366), Run(10, 0, 366));
        maxF.AsSpan(240).Fill(90);
        minF.AsSpan(240).Fill(70);

        // One plant leafs by the number of days alone.
        Assert.Equal("leaf  [ 237 ], bloom  [  ]", Text(SpringIndex.Over(maxF, minF, 42)));
    }

    [Theory]
    [InlineData("60/40 -90/-99", "60/40 40/-99")] // a maximum below the minimum of the day before
    [InlineData("60/40 99/90 60/40", "60/40 99/60 60/40")] // and a minimum above its maximum
    public void Over_RepairsReadingsBookedToTheWrongDay(string readF, string repairedF) => Assert.Equal(
        Text(SpringIndex.Over(Repeated(repairedF, 0), Repeated(repairedF, 1), 42)),
        Text(SpringIndex.Over(Repeated(readF, 0), Repeated(readF, 1), 42)));

    [Fact]
    public void Over_RefusesDaysThatDoNotMatch_AndTheSouth()
    {
        Assert.Throws<ArgumentException>(() => SpringIndex.Over([60], [40, 40], 42));
        Assert.Throws<ArgumentException>(() => SpringIndex.Over([60], [40], -42));
    }

    private static double[] Run(double firstF, double risePerDayF, int days) =>
        [.. Enumerable.Range(1, days).Select(day => firstF + risePerDayF * day)];

    private static double[] Repeated(string days, int part) =>
        [.. Enumerable.Repeat(days.Split(' '), 80).SelectMany(day => day)
            .Select(day => double.Parse(day.Split('/')[part]))];

    private static string Text(SpringIndex index) =>
        $"leaf {index.LeafDay} [{string.Join(' ', index.PlantLeafDays)}], "
        + $"bloom {index.BloomDay} [{string.Join(' ', index.PlantBloomDays)}]";
}
