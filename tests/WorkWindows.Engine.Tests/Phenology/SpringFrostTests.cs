using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Phenology;

public sealed class SpringFrostTests
{
    private static readonly DaySpan TwoYears = DaySpan.Between(new(2020, 1, 1), new(2021, 12, 31));

    [Theory]
    [InlineData("2020-04-20:-2.2 2020-05-10:-1.7", "2020 20 April, 2021 none")] // read as 28 and 29 °F
    [InlineData("2020-06-30:-3 2021-07-01:-3", "2020 30 June, 2021 none")]
    [InlineData("2020-01-05:-30 2021-02-03:-9", "2020 5 January, 2021 3 February")]
    [InlineData("2020-10-20:-9", "2020 none, 2021 none")]
    public void Over_FindsTheLastFrostOfEachSpring(string readings, string years) =>
        Assert.Equal(years, Text(SpringFrost.Over(Column(readings), 28)));

    [Fact]
    public void Over_TakesMinimaAsTheyAre_WhenTheStationDoesNotReadUsUnits() => Assert.Equal(
        "2020 none, 2021 none",
        Text(SpringFrost.Over(Column("2020-04-20:-2.2", readsUsUnits: false), 28)));

    [Theory]
    [InlineData("2020-03-01", 80, "2020 20 May, 2021 none")] // whatever they were, a later frost was seen
    [InlineData("2020-05-21", 1, "2021 none")]
    [InlineData("2020-06-30", 1, "2021 none")]
    [InlineData("2020-07-01", 60, "2020 20 May, 2021 none")]
    [InlineData("2021-02-27", 2, "2020 20 May, 2021 none")]  // before the months that matter
    [InlineData("2021-03-01", 1, "2020 20 May")]
    public void Over_LeavesOutAYear_WhoseLastFrostMayBeMissing(string first, int days, string years)
    {
        var column = Column("2020-05-20:-5");
        var values = column.Values.ToArray();
        values.AsSpan(TwoYears.IndexOf(Date(first)), days).Fill(double.NaN);

        Assert.Equal(years, Text(SpringFrost.Over(column with { Values = [.. values] }, 28)));
    }

    [Theory]
    [InlineData("2021-06-29", "2020 none")]
    [InlineData("2021-06-30", "2020 none, 2021 none")]
    public void Over_LeavesOutAYear_WhoseSpringIsNotOver(string last, string years)
    {
        var column = Column("");
        Assert.Equal(years, Text(SpringFrost.Over(
            column with { Values = column.Values[..(TwoYears.IndexOf(Date(last)) + 1)] }, 28)));
    }

    // 10 °C on every day but those named.
    private static DailyColumn Column(string readings, bool readsUsUnits = true)
    {
        var values = new double[TwoYears.Count];
        Array.Fill(values, 10);
        foreach (var reading in readings.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            values[TwoYears.IndexOf(Date(reading.Split(':')[0]))] = double.Parse(reading.Split(':')[1]);
        return new(TwoYears.First, [.. values], 0, readsUsUnits);
    }

    private static LocalDate Date(string text) => NodaTime.Text.LocalDatePattern.Iso.Parse(text).Value;

    private static string Text(IEnumerable<SpringFrost> frosts) => string.Join(", ", frosts.Select(
        frost => $"{frost.Year} {(frost.LastDay is { } day ? $"{day:d MMMM}" : "none")}"));
}
