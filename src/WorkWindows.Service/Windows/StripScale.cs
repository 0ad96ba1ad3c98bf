using System.Globalization;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Days;

namespace WorkWindows.Service.Windows;

/// <summary>Where days stand in a drawing as wide as its page: one column a day, in per cent of the width.</summary>
public sealed record StripScale(DaySpan Days)
{
    private const int DaysOfALabel = 12;

    private static readonly LocalDatePattern Month = LocalDatePattern.CreateWithInvariantCulture("MMM");
    private static readonly LocalDatePattern MonthAndYear = LocalDatePattern.CreateWithInvariantCulture("MMM uuuu");

    /// <summary>The left edge of a day's column.</summary>
    public string X(LocalDate day) => Percent(Days.IndexOf(day));

    /// <summary>The middle of a day's column.</summary>
    public string Middle(LocalDate day) => Percent(Days.IndexOf(day) + 0.5);

    /// <summary>The width of a run of days, both included.</summary>
    public string Width(LocalDate first, LocalDate last) => Percent(DaySpan.Between(first, last).Count);

    /// <summary>
    /// The first day of each month that begins in the days, January with its year; without a label where none fits.
    /// </summary>
    public IEnumerable<(LocalDate Day, string Label)> Months =>
        Enumerable.Range(0, Days.Count).Select(index => Days[index]).Where(day => day.Day == 1)
            .Select(day => (day, LabelOf(day)));

    private string LabelOf(LocalDate month) => Days.IndexOf(month) + DaysOfALabel > Days.Count
        ? ""
        : (month.Month == 1 ? MonthAndYear : Month).Format(month);

    private string Percent(double days) =>
        $"{(days * 100 / Days.Count).ToString("0.###", CultureInfo.InvariantCulture)}%";
}
