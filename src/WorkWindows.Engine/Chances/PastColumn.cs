using NodaTime;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Chances;

/// <summary>One element of a record, asked for by day numbers.</summary>
internal sealed class PastColumn
{
    private static readonly LocalDate DayZero = new(2000, 1, 1);

    private readonly DailyColumn column;
    private readonly int first;
    private readonly bool wholeFahrenheit, fillsGaps;

    /// <param name="column">The values.</param>
    /// <param name="usual">What is usual; null for an element that is never moved.</param>
    /// <param name="wholeFahrenheit">Whether a moved value is rounded to what the station could have read.</param>
    /// <param name="fillsGaps">Whether a day without a value goes on with what is usual.</param>
    public PastColumn(DailyColumn column, DailyUsual? usual, bool wholeFahrenheit = false, bool fillsGaps = false)
    {
        (this.column, this.wholeFahrenheit, this.fillsGaps, Usual) = (column, wholeFahrenheit, fillsGaps, usual);
        first = NumberOf(column.First);
    }

    public DailyUsual? Usual { get; }

    /// <summary>The value of a day; NaN for none.</summary>
    public double this[int number]
    {
        get
        {
            var index = number - first;
            return index >= 0 && index < column.Values.Length ? column.Values[index] : double.NaN;
        }
    }

    public static int NumberOf(LocalDate date) => Period.DaysBetween(DayZero, date);

    /// <summary>The value of a day moved by a departure.</summary>
    public double Continued(int number, double departureC)
    {
        var value = this[number];
        if (double.IsNaN(value) && fillsGaps)
            value = Usual!.MeanC(DayZero.PlusDays(number));
        var moved = value + departureC;
        return departureC == 0 || !wholeFahrenheit || double.IsNaN(moved) ? moved : AsRead.WholeFahrenheitC(moved);
    }
}
