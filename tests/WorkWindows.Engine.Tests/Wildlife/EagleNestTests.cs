using NodaTime;
using WorkWindows.Engine.Wildlife;

namespace WorkWindows.Engine.Tests.Wildlife;

public sealed class EagleNestTests
{
    [Theory]
    // "Nesting Start and End Dates", US Fish and Wildlife Service, Midwest Region (S): as printed, for a leap year.
    [InlineData(2024, 1, 1, "01-21/02-10 02-25/03-16 05-05/06-15 06-02/07-20")]
    [InlineData(2024, 1, 15, "02-04/02-24 03-10/03-30 05-19/06-29 06-16/08-03")]
    [InlineData(2024, 2, 1, "* 03-27/04-16 06-05/07-16 *")] // a text that has the two stages alone
    // Computed (C).
    [InlineData(2025, 1, 1, "01-21/02-10 02-25/03-17 05-06/06-16 06-03/07-21")]
    [InlineData(2025, 2, 1, "02-21/03-13 03-28/04-17 06-06/07-17 07-04/08-21")]
    public void From_MatchesPublishedDates(int year, int month, int day, string stages)
    {
        var nest = EagleNest.From(new LocalDate(year, month, day));

        Assert.All(stages.Split(' ').Zip([nest.Laid, nest.Hatched, nest.Fledged, nest.Independent]), pair =>
        {
            if (pair.First != "*")
                Assert.Equal(pair.First, $"{pair.Second.Start:MM-dd}/{pair.Second.End:MM-dd}");
        });
    }
}
