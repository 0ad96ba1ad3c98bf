using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Quality;

namespace WorkWindows.Engine.Tests.Weather.Quality;

public sealed class WholeDegreesTests
{
    [Theory]
    [InlineData("USW00094846", true)]
    [InlineData("USW00014839", true)]
    [InlineData("USC00336196", true)]
    public void AreFahrenheit_IsTrue_AtStationsOfTheUnitedStates(string id, bool expected) =>
        Assert.Equal(expected, WholeDegrees.AreFahrenheit(ReferenceStations.Of(ReferenceStations.Record(id).Station)));

    [Fact]
    public void AreFahrenheit_IsFalse_WhereInstrumentsGiveTenthsOfADegreeCelsius() =>
        Assert.False(WholeDegrees.AreFahrenheit(ReferenceStations.CaryAsStamped()));

    [Fact]
    public void AreFahrenheit_IsFalse_OfWholeDegreesCelsius() => Assert.False(WholeDegrees.AreFahrenheit(
        ReferenceStations.Of(ReferenceStations.OHare)
            .Select(reading => reading with { Value = Math.Round(reading.Value) })));

    [Theory]
    [InlineData(99)]
    [InlineData(100)]
    public void AreFahrenheit_CannotTell_BelowAHundredValues(int count) => Assert.Equal(
        count < 100 ? null : true,
        WholeDegrees.AreFahrenheit(ReferenceStations.Of(ReferenceStations.OHare).Take(count)));

    // 20 °F is kept as -6.7 °C.
    [Theory]
    [InlineData(true, -6.7, true)]
    [InlineData(false, -6.7, false)]
    public void Check_GoesByTheStationsCountry_WhereTheRecordIsTooShort(
        bool readsUsUnits, double value, bool isRestored)
    {
        var result = QualityControl.Check(
            [new(new(2012, 1, 1), DailyElement.MinTemperatureC, value, null)], readsUsUnits);

        Assert.Equal(isRestored, result.Usable[DailyElement.MinTemperatureC]!.ReadsUsUnits);
    }
}
