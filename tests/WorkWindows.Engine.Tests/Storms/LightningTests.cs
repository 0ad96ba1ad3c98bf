using NodaTime;
using WorkWindows.Engine.Storms;

namespace WorkWindows.Engine.Tests.Storms;

public sealed class LightningTests
{
    [Theory]
    // Five seconds a mile, thirty seconds six miles (S2).
    [InlineData(5, 1)]
    [InlineData(30, 6)]
    [InlineData(double.NaN, double.NaN)]
    public void DistanceMiles_IsAFifthOfTheSeconds(double seconds, double miles) =>
        Assert.Equal(miles, Lightning.DistanceMiles(seconds));

    [Theory]
    [InlineData(30, true)]
    [InlineData(30.1, false)]
    [InlineData(double.NaN, true)]
    public void CallsForShelter_UpToThirtySeconds(double seconds, bool calls) =>
        Assert.Equal(calls, Lightning.CallsForShelter(seconds));

    [Theory]
    [InlineData("14:02 14:20", "14:50")] // (C)
    [InlineData("14:20 14:02", "14:50")]
    [InlineData("14:02", "14:32")]
    [InlineData("", null)]
    public void AllClearAt_IsHalfAnHourAfterTheLastThunder(string thunders, string? clear)
    {
        var times = thunders.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(At);

        Assert.Equal(clear is null ? null : At(clear), Lightning.AllClearAt([.. times]));
    }

    private static Instant At(string time) =>
        Instant.FromUtc(2026, 6, 1, int.Parse(time[..2]), int.Parse(time[3..]));
}
