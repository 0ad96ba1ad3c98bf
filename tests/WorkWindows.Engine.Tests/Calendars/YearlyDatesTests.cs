using CsCheck;
using NodaTime;
using WorkWindows.Engine.Calendars;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Calendars;

public sealed class YearlyDatesTests
{
    [Theory]
    [InlineData(2024, 29)]
    [InlineData(2025, 28)]
    [InlineData(2100, 28)] // a century that is no leap year
    public void Resolve_KeepsFebruary29InFebruary(int year, int day) =>
        Assert.Equal(new LocalDate(year, 2, day), new FixedDate(2, 29).Resolve(year));

    [Theory]
    [InlineData(1, 2026, 5)]
    [InlineData(4, 2026, 26)]
    [InlineData(5, 2026, null)]
    [InlineData(5, 2023, 30)]
    [InlineData(-1, 2023, 30)]
    [InlineData(-1, 2026, 26)]
    [InlineData(-4, 2026, 5)]
    [InlineData(-5, 2026, null)]
    [InlineData(-5, 2023, 2)]
    public void Resolve_CountsWeekdaysFromEitherEnd(int nth, int year, int? november) =>
        Assert.Equal(november, new NthWeekday(nth, IsoDayOfWeek.Thursday, 11).Resolve(year)?.Day);

    [Fact]
    public void Resolve_RefusesTheZerothWeekday() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new NthWeekday(0, IsoDayOfWeek.Thursday, 11).Resolve(2026));

    [Fact]
    public void Resolve_AddsDaysOverTheEndOfTheYear() => Assert.Equal(
        new LocalDate(2025, 12, 29), new FixedDate(1, 3) { PlusDays = -5 }.Resolve(2026));

    [Fact]
    public void Resolve_HasNoDateForAnEvent() => Assert.Null(
        new EventDate(SeasonEventKind.LeafOut, new(3, 15), new(6, 15)).Resolve(2026));

    [Fact]
    public void Resolve_FindsTheNearestAndTheNextWeekday() =>
        Gen.Select(Gen.Int[1, 7], Gen.Int[1, 12], Gen.Int[1, 28], Gen.Int[1900, 2200]).Sample(
        (weekday, month, day, year) =>
        {
            var around = new LocalDate(year, month, day);
            var nearest = new NearestWeekday((IsoDayOfWeek)weekday, month, day).Resolve(year)!.Value;
            var next = new WeekdayOnOrAfter((IsoDayOfWeek)weekday, month, day).Resolve(year)!.Value;
            return (int)nearest.DayOfWeek == weekday && Math.Abs(Period.DaysBetween(around, nearest)) <= 3
                && (int)next.DayOfWeek == weekday && Period.DaysBetween(around, next) is >= 0 and < 7;
        });
}
