using CsCheck;
using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Tests.Days;

public class DayBitsTests
{
    private static readonly Gen<bool[]> Days = Gen.Bool.Array[1, 200];

    private static readonly Gen<(bool[] Left, bool[] Right)> Pairs =
        Gen.Int[1, 200].SelectMany(length => Gen.Select(Gen.Bool.Array[length], Gen.Bool.Array[length]));

    [Fact]
    public void Operators_AgreeWithBooleanLogicDayByDay() => Pairs.Sample((left, right) =>
    {
        var (a, b) = (Set(left), Set(right));
        for (var day = 0; day < left.Length; day++)
        {
            Assert.Equal(left[day] || right[day], (a | b)[day]);
            Assert.Equal(left[day] && right[day], (a & b)[day]);
            Assert.Equal(left[day] && !right[day], a.Except(b)[day]);
            Assert.Equal(!left[day], (~a)[day]);
        }
    });

    [Fact]
    public void Complement_CountsTheRest() =>
        Days.Sample(days => Assert.Equal(days.Length, Set(days).Count + (~Set(days)).Count));

    [Fact]
    public void Later_MovesEachDay() => Gen.Select(Days, Gen.Int[0, 220], Gen.Bool).Sample((days, by, fill) =>
    {
        var moved = Set(days).Later(by, fill);
        for (var day = 0; day < days.Length; day++)
            Assert.Equal(day < by ? fill : days[day - by], moved[day]);
    });

    [Fact]
    public void Runs_CoverExactlyTheSet() => Days.Sample(days =>
    {
        var covered = new bool[days.Length];
        var end = -2;
        foreach (var (first, last) in Set(days).Runs())
        {
            Assert.True(first > end + 1, "Runs that touch should have been one run.");
            Array.Fill(covered, true, first, last - first + 1);
            end = last;
        }
        Assert.Equal(days, covered);
    });

    [Theory]
    [InlineData(70, -3, 2, 3)]
    [InlineData(70, 60, 66, 7)]
    [InlineData(70, 64, 99, 6)]
    [InlineData(70, 5, 4, 0)]
    [InlineData(64, 0, 63, 64)]
    public void Range_IsCutOffAtTheSpan(int length, int first, int last, int count) =>
        Assert.Equal(count, DayBits.Range(length, first, last).Count);

    [Fact]
    public void Combine_RefusesOtherLengths() =>
        Assert.Throws<ArgumentException>(() => DayBits.None(3) | DayBits.None(4));

    private static DayBits Set(bool[] days) => DayBits.Where(days.Length, day => days[day]);
}
