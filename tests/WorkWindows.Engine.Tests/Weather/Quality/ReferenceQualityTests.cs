using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Quality;

namespace WorkWindows.Engine.Tests.Weather.Quality;

/// <summary>The traps of the reference stations, and how little of good records is rejected.</summary>
public sealed class ReferenceQualityTests
{
    // Sixteen stations, 446,000 values: 38 beside the days whose minimum is above the maximum.
    [Fact]
    public void Check_RejectsLessThanOneInTwoThousand_OfAllSixteenStations()
    {
        var rejected = ReferenceStations.All.Sum(record => record.Record.Rejected.Length);
        var all = ReferenceStations.All.Sum(record => Count(record.Record.Usable)) + rejected;

        Assert.InRange((double)rejected / all, 0, 0.0005);
    }

    [Fact]
    public void Check_RejectsLessThanFourInAThousand_OfAnyStation() => Assert.All(
        ReferenceStations.All,
        record => Assert.InRange((double)record.Record.Rejected.Length / Count(record.Record.Usable), 0, 0.004));

    [Theory]
    [InlineData("USC00125237", 27)]
    [InlineData("USC00200230", 4)]
    [InlineData("USC00111497", 2)]
    [InlineData("USW00094846", 0)]
    public void Check_RejectsTheDaysWhoseMinimumIsAboveTheMaximum(string id, int days)
    {
        var crossed = ReferenceStations.Record(id).Record.Rejected
            .Where(reading => reading.Reason == RejectionReason.MinimumAboveMaximum).ToList();

        Assert.Equal(2 * days, crossed.Count);
        Assert.Equal(days, crossed.Select(reading => reading.Date).Distinct().Count());
    }

    // Absent days and missing values stay unknown: nothing is made up by the checks.
    [Theory]
    [InlineData("USC00111280", DailyElement.MaxTemperatureC, 1461 + 287)]
    [InlineData("USC00125237", DailyElement.MaxTemperatureC, 1470)]
    [InlineData("USC00336196", DailyElement.MaxTemperatureC, 2068)]
    public void Check_LeavesMissingMaximaMissing(string id, DailyElement element, int missing)
    {
        var column = QualityControl.Check(ReferenceStations.OfCooperative(id), true).Usable[element]!;
        var days = DaySpan.Between(new(1985, 1, 1), new(2014, 12, 31));
        var values = new double[days.Count];
        column.CopyTo(days, values);
        var rejected = ReferenceStations.Record(id).Record.Rejected.Count(reading => reading.Element == element);

        Assert.Equal(missing, values.Count(double.IsNaN) - rejected);
    }

    // Wauseon in 2003: 0 °F was keyed where nothing was read. Whitestown and Charles City: a maximum of August.
    [Theory]
    [InlineData("USC00338822", "2003-08-15", DailyElement.MinTemperatureC, RejectionReason.DailyRange)]
    [InlineData("USC00338822", "1998-07-03", DailyElement.MinTemperatureC, RejectionReason.Spike)]
    [InlineData("USC00129557", "1992-08-09", DailyElement.MaxTemperatureC, RejectionReason.MinimumAboveMaximum)]
    [InlineData("USC00131402", "1997-08-27", DailyElement.MaxTemperatureC, RejectionReason.MinimumAboveMaximum)]
    [InlineData("USC00123418", "1988-09-21", DailyElement.MinTemperatureC, RejectionReason.Spike)]
    [InlineData("USC00125237", "1993-08-25", DailyElement.MinTemperatureC, RejectionReason.OutOfSeason)]
    [InlineData("USC00200230", "1991-06-08", DailyElement.MinTemperatureC, RejectionReason.DailyRange)]
    public void Check_FindsKnownMistakes(string id, string date, DailyElement element, RejectionReason reason) =>
        Assert.Equal(reason, ReferenceStations.Record(id).Record.Rejected.Single(reading =>
            reading.Date == NodaTime.Text.LocalDatePattern.Iso.Parse(date).Value && reading.Element == element).Reason);

    // The coldest December and the warmest March of these stations are no mistakes.
    [Theory]
    [InlineData("USC00118740", 1989, 12)]
    [InlineData("USC00339312", 2012, 3)]
    [InlineData("USC00138688", 2014, 2)]
    public void Check_KeepsTheExtremesOfRecordMonths(string id, int year, int month) => Assert.DoesNotContain(
        ReferenceStations.Record(id).Record.Rejected, reading => Faults.IsMonth(reading.Date, year, month));

    // 8,225 rows of summer time are stamped an hour early. Where clocks go forward a day has two rows that differ.
    [Fact]
    public void Check_NamesTheDaysOnWhichCarysRowsCollide_WhenTheHourIsNotAdded()
    {
        var rejected = QualityControl.Check(ReferenceStations.CaryAsStamped(), false).Rejected
            .Where(reading => reading.Reason == RejectionReason.Duplicate)
            .Select(reading => reading.Date).Distinct().ToList();

        Assert.Equal(36, rejected.Count);
        Assert.All(rejected, date => Assert.True(
            date.DayOfWeek is IsoDayOfWeek.Saturday or IsoDayOfWeek.Sunday && date.Month is 3 or 4, $"{date:R}"));
    }

    private static int Count(DailySeries series) =>
        new[] { DailyElement.MinTemperatureC, DailyElement.MaxTemperatureC }
            .Sum(element => series[element]!.Values.Count(value => !double.IsNaN(value)));
}
