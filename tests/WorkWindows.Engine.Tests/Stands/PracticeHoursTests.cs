using Shouldly;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Stands.Hours;

namespace WorkWindows.Engine.Tests.Stands;

public sealed class PracticeHoursTests
{
    /// <summary>
    /// 145 stems a productive hour of which 73 % is worked, to 90 a scheduled hour (Hoffman 1986); 1,000 to 3,000 seedlings a
    /// day (University of Minnesota, Woodland Stewardship, chapter 4), a day of 8 h; the others common practice, no source.
    /// </summary>
    [Theory]
    [InlineData("hinge-cut", 180, "stems", 1.7, 2.0)]
    [InlineData("conifer-underplanting", 600, "trees", 1.6, 4.8)]
    [InlineData("hinge-cut", 2, "acres", 12, 40)]
    [InlineData("tie-down", 60, "stems", 2, 6)]
    [InlineData("trail-opening", 1000, "feet", 2.5, 10)]
    [InlineData("cleanup", 24, "hours", 24, 24)]
    public void Of_IsARange(string practice, double quantity, string unit, double low, double high)
    {
        var hours = PracticeHours.Of(PracticeCatalogue.Find(practice)!, quantity, unit)!;

        hours.PersonHours.Low.ShouldBe(low, 0.05);
        hours.PersonHours.High.ShouldBe(high, 0.05);
        hours.Source.ShouldNotBeEmpty();
    }

    [Fact]
    public void Of_IsNotKnown_WhereNobodyCountsThePracticeSo() =>
        PracticeHours.Of(PracticeCatalogue.Find("tie-down")!, 100, "feet").ShouldBeNull();
}
