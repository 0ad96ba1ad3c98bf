using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Chances;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Crews;

/// <summary>A crew on a day, in the space of a thumbnail.</summary>
/// <param name="Day">The day.</param>
/// <param name="Hours">Of work; 0 on a day without.</param>
/// <param name="IsOff">The crew does not work.</param>
/// <param name="Share">How likely all its work is to be workable, 0 to 1: that of the least likely; null where unknown.</param>
public sealed record CrewDayMark(LocalDate Day, decimal Hours, bool IsOff, double? Share)
{
    public bool HasWork => Hours > 0;

    /// <summary>Work that cannot be done as known now, or of which nothing is known.</summary>
    public bool IsTroubled => HasWork && Share is null or 0;

    /// <summary>In a character or two: the chance in percent, or a sign for what is certain.</summary>
    public string Sign => this switch
    {
        { HasWork: false, IsOff: true } => "–",
        { HasWork: false } => "",
        { IsTroubled: true } => "!",
        { Share: >= 1 } => "✓",
        _ => $"{ChanceWords.Percent(Share!.Value)}",
    };

    public string Style => this switch
    {
        { HasWork: false } => "free",
        { IsTroubled: true } => "doubted",
        { Share: >= 1 } => "sure",
        _ => "likely",
    };

    public string Words => $"{DayWords.Of(Day)}: " + this switch
    {
        { HasWork: false, IsOff: true } => "off",
        { HasWork: false } => "no work",
        { IsTroubled: true } => $"{Hours:0.#} h, not workable as known now",
        { Share: >= 1 } => $"{Hours:0.#} h, workable",
        _ => $"{Hours:0.#} h, about {ChanceWords.Percent(Share!.Value)} % likely",
    };

    public static CrewDayMark Of(BoardCell cell) => new(
        cell.Day, cell.Cards.Sum(card => card.Hours), cell.Off is not null, cell.Cards.Select(Of) is var shares
            && shares.Contains(null) ? null : shares.Min());

    private static double? Of(BookingCard card) => card.Missing.Count > 0 ? 0 : card.State switch
    {
        DayState.Open or DayState.Limited => 1,
        DayState.Closed => 0,
        DayState.Unknown => card.Chance?.Share,
    };
}

/// <summary>A crew's seven days from a Monday on.</summary>
public sealed record CrewWeek(IReadOnlyList<CrewDayMark> Days)
{
    public int DaysWithWork => Days.Count(day => day.HasWork);

    public decimal Hours => Days.Sum(day => day.Hours);
}

/// <summary>A crew's weeks.</summary>
public sealed record SeasonBoardRow(string Crew, IReadOnlyList<CrewWeek> Weeks);

/// <summary>Crews and days, a week a line.</summary>
public sealed record SeasonBoard(IReadOnlyList<LocalDate> Weeks, IReadOnlyList<SeasonBoardRow> Rows)
{
    private const int DaysAWeek = 7;

    /// <param name="board">A board of whole weeks from a Monday on.</param>
    public static SeasonBoard Of(Board board) => new(
        [.. board.Days.Where(day => day.DayOfWeek == IsoDayOfWeek.Monday)],
        [.. board.Rows.Select(row => new SeasonBoardRow(
            row.Crew, [.. row.Cells.Select(CrewDayMark.Of).Chunk(DaysAWeek).Select(week => new CrewWeek(week))]))]);
}
