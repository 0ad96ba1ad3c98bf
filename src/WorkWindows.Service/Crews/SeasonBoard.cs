using NodaTime;
using WorkWindows.Engine.Evaluation;

namespace WorkWindows.Service.Crews;

/// <summary>A crew's week.</summary>
/// <param name="Monday">Its first day.</param>
/// <param name="Days">Days with work.</param>
/// <param name="Hours">Hours of work.</param>
/// <param name="LikelyShare">The mean chance of its days, 0 to 1; null where a day's is not known, or without days.</param>
/// <param name="Troubled">Days that cannot be worked as known now.</param>
public sealed record CrewWeek(LocalDate Monday, int Days, decimal Hours, double? LikelyShare, int Troubled);

/// <summary>A crew's weeks.</summary>
public sealed record SeasonBoardRow(string Crew, IReadOnlyList<CrewWeek> Weeks);

/// <summary>Crews and weeks.</summary>
public sealed record SeasonBoard(IReadOnlyList<LocalDate> Weeks, IReadOnlyList<SeasonBoardRow> Rows)
{
    /// <param name="board">A board of whole weeks from a Monday on.</param>
    public static SeasonBoard Of(Board board) => new(
        [.. board.Days.Where(day => day.DayOfWeek == IsoDayOfWeek.Monday)],
        [.. board.Rows.Select(row => new SeasonBoardRow(
            row.Crew,
            [.. row.Cells.GroupBy(cell => cell.Day.PlusDays(IsoDayOfWeek.Monday - cell.Day.DayOfWeek))
                .Select(week => Week(week.Key, [.. week.SelectMany(cell => cell.Cards)]))]))]);

    private static CrewWeek Week(LocalDate monday, IReadOnlyList<BookingCard> cards)
    {
        var shares = cards.Select(Share).ToList();
        return new(
            monday, cards.Select(card => card.Day).Distinct().Count(), cards.Sum(card => card.Hours),
            shares.Count == 0 || shares.Contains(null) ? null : shares.Average(),
            cards.Where(card => card.Trouble is not null).Select(card => card.Day).Distinct().Count());
    }

    private static double? Share(BookingCard card) => card.State switch
    {
        DayState.Open or DayState.Limited => 1,
        DayState.Closed => 0,
        DayState.Unknown => card.Chance?.Share,
    };
}
