using WorkWindows.Engine.Days;
using WorkWindows.Engine.Phenology;

namespace WorkWindows.Engine.Tests.Phenology;

/// <summary>Leaf on day 100, bloom on day 120; freezes and gaps on the days named.</summary>
public sealed class SpringFreezeTests
{
    private const int LeafDay = 100;
    private const int BloomDay = 120;

    [Theory]
    [InlineData("125:28", 25)]
    [InlineData("125:28.1", 0)]
    [InlineData("110:20 125:28 130:29", 25)]
    [InlineData("99:10", 0)]
    [InlineData("100:10", 0)]
    [InlineData("110:NaN 125:28", 25)] // a gap before the last freeze does not matter
    [InlineData("125:28 130:NaN", null)] // one after it does
    public void DamageIndexDays_RunsFromLeafToTheLastFreeze(string minF, int? days) =>
        Assert.Equal(days, SpringFreeze.DamageIndexDays(Year(minF), LeafDay));

    [Theory]
    [InlineData("106:28", Truth.Fails)]
    [InlineData("107:28", Truth.Holds)]
    [InlineData("120:28", Truth.Holds)]
    [InlineData("121:28", Truth.Fails)]
    [InlineData("115:29", Truth.Fails)]
    [InlineData("115:NaN", Truth.Unknown)]
    [InlineData("115:NaN 116:28", Truth.Holds)]
    [InlineData("121:NaN", Truth.Fails)]
    public void IsEarlyFalseSpring_LooksFromSevenDaysAfterLeafToBloom(string minF, Truth truth) =>
        Assert.Equal(truth, SpringFreeze.IsEarlyFalseSpring(Year(minF), LeafDay, BloomDay));

    [Theory]
    [InlineData("120:28", Truth.Fails)]
    [InlineData("121:28", Truth.Holds)]
    [InlineData("181:NaN", Truth.Unknown)]
    public void IsLateFalseSpring_LooksAfterBloom(string minF, Truth truth) =>
        Assert.Equal(truth, SpringFreeze.IsLateFalseSpring(Year(minF), BloomDay));

    [Fact]
    public void IsEarlyFalseSpring_IsUnknown_WhenTheDaysEndBeforeBloom() => Assert.Equal(
        Truth.Unknown, SpringFreeze.IsEarlyFalseSpring(Year("").AsSpan(0, BloomDay - 1), LeafDay, BloomDay));

    private static double[] Year(string readings)
    {
        var minF = new double[181];
        Array.Fill(minF, 50);
        foreach (var reading in readings.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            minF[int.Parse(reading.Split(':')[0]) - 1] = double.Parse(reading.Split(':')[1]);
        return minF;
    }
}
