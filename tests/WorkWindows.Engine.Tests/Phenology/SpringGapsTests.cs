using WorkWindows.Engine.Phenology;

namespace WorkWindows.Engine.Tests.Phenology;

/// <summary>The rules of the published toolbox (S).</summary>
public sealed class SpringGapsTests
{
    [Fact]
    public void Filled_GivesAMissingDayTheMeanOfItsBlock()
    {
        var days = Days();
        days.AsSpan(30, 10).Fill(double.NaN);

        var filled = SpringGaps.Filled(days)!;

        // Days 31 to 60, of which 41 to 60 have values.
        Assert.Equal(50.5, filled[30]);
        Assert.Equal(50.5, filled[39]);
        Assert.Equal(41, filled[40]);
        Assert.Equal(SpringIndex.Days, filled.Length);
    }

    [Theory]
    [InlineData(210, 10, true)]
    [InlineData(210, 11, false)]
    [InlineData(20, 20, true)] // ten in each of two blocks
    [InlineData(240, 60, true)] // after the days looked at
    public void Filled_IsNull_WhenABlockHasFewerThanTwentyValues(int first, int count, bool isFilled)
    {
        var days = Days();
        days.AsSpan(first, count).Fill(double.NaN);

        Assert.Equal(isFilled, SpringGaps.Filled(days) is not null);
    }

    [Theory]
    [InlineData(10, true)]
    [InlineData(11, false)]
    public void Filled_IsNull_WhenABlockHasMoreThanTenZeros(int zeros, bool isFilled)
    {
        var days = Days();
        days.AsSpan(0, zeros).Clear();

        Assert.Equal(isFilled, SpringGaps.Filled(days) is not null);
    }

    [Fact]
    public void Filled_IsNull_WhenTheYearIsShort() => Assert.Null(SpringGaps.Filled(Days().AsSpan(0, 239)));

    // Every day has its own day of the year as its temperature.
    private static double[] Days() => [.. Enumerable.Range(1, 365).Select(day => (double)day)];
}
