using System.Globalization;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Weather;

public sealed class ShiftedMaximaTests
{
    private const string OHare = "USW00094846_ohare_access_degF.csv";
    private const string BotanicGarden = "USC00111497_chicago_botanic_access_degF.csv";

    [Fact]
    public void Years_HasNone_AtAnAirportThatKeepsCalendarDays() =>
        Assert.Empty(ShiftedMaxima.Years(DailySeries.Of(Readings(OHare))));

    // That its observers read in the morning is told by the airport below, not by the file.
    [Fact]
    public void Years_HasAllButTwo_AtAStationReadInTheMorning() => Assert.Equal(
        Enumerable.Range(1995, 25).Except([1997, 1999]),
        ShiftedMaxima.Years(DailySeries.Of(Readings(BotanicGarden))));

    [Fact]
    public void PutBack_BringsTheGardenIntoStepWithTheAirport()
    {
        var airport = DailySeries.Of(Readings(OHare));
        var garden = DailySeries.Of(Readings(BotanicGarden));

        Assert.Equal(3.50, MeanDifferenceC(garden, airport), 0.01);
        Assert.Equal(1.45, MeanDifferenceC(ShiftedMaxima.PutBack(garden), airport), 0.01);
    }

    [Fact]
    public void PutBack_RestoresTheMaxima_WhenAllAreBookedADayLate()
    {
        var readings = Readings(OHare).ToList();
        var late = DailySeries.Of(readings.Select(reading => reading.Element == DailyElement.MaxTemperatureC
            ? reading with { Date = reading.Date.PlusDays(1) }
            : reading));
        var right = DailySeries.Of(readings)[DailyElement.MaxTemperatureC]!;

        Assert.Equal(Enumerable.Range(1995, 25), ShiftedMaxima.Years(late));
        var restored = ShiftedMaxima.PutBack(late)[DailyElement.MaxTemperatureC]!;
        var wrong = Enumerable.Range(0, right.Values.Length).Select(right.First.PlusDays)
            .Where(day => !double.IsNaN(restored[day]) && restored[day] != right[day]);
        Assert.Empty(wrong);
        // Two are lost: they lie below the minimum of the day that they were booked to.
        Assert.Equal(2, Count(right) - Count(restored));

        static int Count(DailyColumn column) => column.Values.Count(value => !double.IsNaN(value));
    }

    [Fact]
    public void PutBack_ShiftsOnlyTheYearsThatAreLate()
    {
        var readings = Readings(OHare).ToList();
        var late = DailySeries.Of(readings
            .Where(reading => !IsMaxOf2006(reading) || reading.Date != new LocalDate(2006, 12, 31))
            .Select(reading => IsMaxOf2006(reading) ? reading with { Date = reading.Date.PlusDays(1) } : reading));

        Assert.Equal([2006], ShiftedMaxima.Years(late));
        var (right, restored) = (DailySeries.Of(readings), ShiftedMaxima.PutBack(late));
        foreach (var day in new LocalDate[] { new(2005, 12, 31), new(2006, 1, 1), new(2006, 7, 1), new(2007, 1, 1) })
            Assert.Equal(right[DailyElement.MaxTemperatureC]![day], restored[DailyElement.MaxTemperatureC]![day]);

        static bool IsMaxOf2006(DailyReading reading) =>
            reading.Element == DailyElement.MaxTemperatureC && reading.Date.Year == 2006;
    }

    [Fact]
    public void Years_HasNone_WithoutValuesOrVariation()
    {
        Assert.Empty(ShiftedMaxima.Years(DailySeries.Empty));
        Assert.Empty(ShiftedMaxima.Years(DailySeries.Of(SteadyRecord.OfYears(2010, 2012, 6))));
    }

    // Mean absolute difference of the two stations' maxima, °C.
    private static double MeanDifferenceC(DailySeries one, DailySeries other)
    {
        var (first, second) = (one[DailyElement.MaxTemperatureC]!, other[DailyElement.MaxTemperatureC]!);
        return Enumerable.Range(0, first.Values.Length).Select(first.First.PlusDays)
            .Select(day => Math.Abs(first[day] - second[day])).Where(difference => !double.IsNaN(difference)).Average();
    }

    private static IEnumerable<DailyReading> Readings(string file)
    {
        var lines = File.ReadLines(ProjectFiles.Reference(Path.Combine("stations", "noaa-csv", file)))
            .Select(line => line.Split(',').Select(field => field.Trim('"')).ToArray()).ToList();
        var (date, min, max) = (Column("DATE"), Column("TMIN"), Column("TMAX"));
        foreach (var line in lines.Skip(1))
        {
            var day = LocalDatePattern.Iso.Parse(line[date]).Value;
            if (line[min] is not "")
                yield return new(day, DailyElement.MinTemperatureC, Celsius(line[min]), null);
            if (line[max] is not "")
                yield return new(day, DailyElement.MaxTemperatureC, Celsius(line[max]), null);
        }

        int Column(string name) => Array.IndexOf(lines[0], name);
        static double Celsius(string degF) => (double.Parse(degF, CultureInfo.InvariantCulture) - 32) / 1.8;
    }
}
