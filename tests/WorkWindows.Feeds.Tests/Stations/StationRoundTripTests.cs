using CsCheck;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Stations;

namespace WorkWindows.Feeds.Tests.Stations;

public class StationRoundTripTests
{
    private static readonly string[] Codes = ["TMIN", "TMAX", "WSF2", "WSFG", "PRCP", "SNWD"];

    private static readonly Gen<StationMonth> Months =
        Gen.Select(Gen.Int[1890, 2030], Gen.Int[1, 12], Gen.Int[0, 5], Gen.Select(
            Gen.OneOf(Gen.Int[0, 550], Gen.Const(-9999)), Gen.OneOf(Gen.Const(' '), Gen.Char['A', 'Z'])).Array[31],
            (year, month, code, days) => new StationMonth(year, month, Codes[code], days));

    [Fact]
    public void Read_GivesBackWhatWasWritten_InTheFixedWidthForm() =>
        Months.Sample(month => Assert.Equal(month.Readings(), StationText.Read(month.ToDly()).Station!.Readings));

    [Fact]
    public void Read_GivesBackWhatWasWritten_InTheCsvForm() =>
        Months.Sample(month => Assert.Equal(month.Readings(), StationText.Read(month.ToCsv()).Station!.Readings));

    [Fact]
    public void Read_DoesNotDependOnTheOrderOfLines() =>
        Gen.Select(Months, Gen.Int).Sample((month, seed) =>
        {
            var lines = month.ToCsv().ToArray();
            new Random(seed).Shuffle(lines);
            return month.Readings().SequenceEqual(StationText.Read(lines).Station!.Readings);
        });

    [Theory]
    [InlineData("stations/dly/USC00368449.dly")]
    [InlineData("stations/dly/USW00014922.core.dly")]
    public void Read_GivesTheSame_OfBothFormsOfAStation(string path)
    {
        var lines = File.ReadLines(ProjectFiles.Reference(path)).ToList();
        var fixedWidth = StationText.Read(lines).Station!;
        var csv = StationText.Read(lines.SelectMany(AsCsv)).Station!;
        Assert.Equal(fixedWidth.StationId, csv.StationId);
        Assert.Equal(fixedWidth.Readings, csv.Readings);
    }

    private static IEnumerable<string> AsCsv(string line) =>
        from day in Enumerable.Range(1, 31)
        let at = 21 + (day - 1) * 8
        let value = line.Substring(at, 5).Trim()
        where value != "-9999"
        let flags = line.Substring(at + 5, 3).Select(flag => flag == ' ' ? "" : $"{flag}")
        select $"{line[..11]},{line[11..17]}{day:00},{line[17..21]},{value},{string.Join(',', flags)},";

    private sealed record StationMonth(int Year, int Month, string Code, (int Tenths, char Flag)[] Days)
    {
        private int Length => DateTime.DaysInMonth(Year, Month);

        public string ToDly() => $"USW00014922{Year}{Month:00}{Code}" + string.Concat(Days.Select((day, index) =>
            index < Length ? $"{day.Tenths,5} {day.Flag}W" : StationText.Missing));

        public IEnumerable<string> ToCsv() => Days.Take(Length).Select((day, index) =>
            $"USW00014922,{Year}{Month:00}{index + 1:00},{Code},{day.Tenths},,{$"{day.Flag}".Trim()},W,2400");

        public IEnumerable<DailyReading> Readings()
        {
            var element = (DailyElement)Array.IndexOf(Codes, Code);
            return Days.Take(Length)
                .Select((day, index) => new DailyReading(
                    new(Year, Month, index + 1), element, day.Tenths / 10.0, day.Flag == ' ' ? null : day.Flag))
                .Where(reading => reading.Value > -900);
        }
    }
}
