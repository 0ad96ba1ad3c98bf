using NodaTime;
using WorkWindows.Engine.Climatology;
using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Tests.Weather;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Phenology;

/// <summary>
/// What must hold of last frosts by their definition in the US Climate Normals (NOAA NCEI): a spring date of P10 has a
/// chance of one in ten of a frost after it, so that it is the latest. Of the stations whose normals are published none
/// is at hand; those at hand are told by the same relations.
/// </summary>
public sealed class SpringFrostStationTests
{
    private const double LatestShare = 0.9, MiddleShare = 0.5, EarliestShare = 0.1;

    public static TheoryData<string> Stations() =>
        new(ReferenceStations.All.Select(station => station.Station.Id).ToArray());

    [Theory]
    [MemberData(nameof(Stations))]
    public void Over_HasP10LaterThanP50LaterThanP90_AtEachLimit(string station)
    {
        foreach (var limitF in new[] { 32.0, 28, 24 })
        {
            var days = Days(station, limitF).Values.Select(day => (double)day).ToList();
            var (p10, p50, p90) = (
                Quantile.Of(days, LatestShare), Quantile.Of(days, MiddleShare), Quantile.Of(days, EarliestShare));

            // USC00125237 has the fewest: of many springs a night is missing.
            Assert.True(days.Count >= 9, $"{days.Count} springs at {limitF} °F");
            Assert.True(p10 > p50 && p50 > p90, $"{limitF} °F: {p10}, {p50}, {p90}");
        }
    }

    [Theory]
    [MemberData(nameof(Stations))]
    public void Over_HasNoLaterFrostAtALowerLimit(string station)
    {
        var (light, hard, severe) = (Days(station, 32), Days(station, 28), Days(station, 24));

        foreach (var (year, day) in hard)
            Assert.True(!light.TryGetValue(year, out var last) || day <= last, $"{year}");
        foreach (var (year, day) in severe)
            Assert.True(!hard.TryGetValue(year, out var last) || day <= last, $"{year}");
        foreach (var share in new[] { LatestShare, MiddleShare, EarliestShare })
            Assert.True(At(severe, share) <= At(hard, share) && At(hard, share) <= At(light, share));
    }

    private static double At(Dictionary<int, int> days, double share) =>
        Quantile.Of(days.Values.Select(day => (double)day), share);

    /// <summary>The day of the year of the last frost of each spring that has one.</summary>
    private static Dictionary<int, int> Days(string station, double limitF) =>
        SpringFrost.Over(ReferenceStations.Record(station).Record.Usable[DailyElement.MinTemperatureC]!, limitF)
            .Where(frost => frost.LastDay is not null)
            .ToDictionary(frost => frost.Year, frost => frost.LastDay!.Value.DayOfYear);
}
