using Shouldly;
using WorkWindows.Service.Crews;

namespace WorkWindows.Service.Tests.Crews;

public sealed class SeasonBoardTests
{
    [Theory]
    [InlineData(0, false, null, "", "Tue 3 Feb: no work")]
    [InlineData(0, true, null, "–", "Tue 3 Feb: off")]
    [InlineData(6, false, 1.0, "✓", "Tue 3 Feb: 6 h, workable")]
    [InlineData(6, false, 0.62, "60", "Tue 3 Feb: 6 h, about 60 % likely")]
    [InlineData(6.5, true, 0.0, "!", "Tue 3 Feb: 6.5 h, not workable as known now")]
    [InlineData(6, false, null, "!", "Tue 3 Feb: 6 h, not workable as known now")]
    public void Day_IsTold_InASignAndInWords(double hours, bool isOff, double? share, string sign, string words)
    {
        var day = new CrewDayMark(new(2026, 2, 3), (decimal)hours, isOff, share);

        day.Sign.ShouldBe(sign);
        day.Words.ShouldBe(words);
    }
}
