using NodaTime;
using WorkWindows.Engine.Chances;
using WorkWindows.Engine.Climatology;
using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Service.Records;

/// <summary>A day's sum of heat, in °F-days.</summary>
/// <param name="Date">The day at whose end it stands.</param>
/// <param name="SumF">This year's; null where it is not known.</param>
/// <param name="IsForecast">The forecast has a part in it.</param>
/// <param name="P10">One in ten past years had less; null with fewer than fifteen of them. Quantiles of type 8.</param>
/// <param name="P50">Half of them had less.</param>
/// <param name="P90">Nine in ten had less.</param>
public sealed record HeatDay(LocalDate Date, double? SumF, bool IsForecast, double? P10, double? P50, double? P90);

/// <summary>The degree-days of a spring against those of past years.</summary>
/// <param name="Days">From the start of the leaf-out model on.</param>
/// <param name="NeededF">The sum that leaf-out needs, °F-days.</param>
/// <param name="BaseF">The daily mean above which heat counts, °F.</param>
/// <param name="PastYears">The past years behind the quantiles; none when they are too few.</param>
/// <param name="Reached">The first day of this year with as much as leaf-out needs; null while there is none.</param>
public sealed record HeatChart(
    IReadOnlyList<HeatDay> Days, double NeededF, double BaseF, IReadOnlyList<int> PastYears, HeatDay? Reached)
{
    /// <summary>Until the end of June at most, which is long after any leaf-out.</summary>
    private const int MostDays = 101;

    /// <summary>
    /// When even a cold year has twice what leaf-out needs, the rest of the spring tells nothing more.
    /// </summary>
    private const double Enough = 2;

    /// <param name="seasons">The springs of the record.</param>
    /// <param name="model">The model that they were counted by.</param>
    /// <param name="year">This year.</param>
    /// <returns>Null when there is neither this year's heat nor enough of past years.</returns>
    public static HeatChart? Of(IReadOnlyCollection<HeatSeason> seasons, ThermalTime model, int year)
    {
        var past = seasons.Where(season => season.Year < year && !double.IsNaN(season.SumsC[^1]))
            .OrderByDescending(season => season.Year).Take(Ensemble.UsualYears).ToList();
        if (past.Count < Ensemble.MinYears)
            past = [];
        var current = seasons.FirstOrDefault(season => season.Year == year);
        if (current is null && past.Count == 0)
            return null;
        var start = new LocalDate(year, model.Start.Month, model.Start.Day);
        var needed = Math.Round(InF(model.RequiredDegreeDaysC));
        var days = new List<HeatDay>(MostDays);
        for (var day = 0; day < MostDays && !(days.Count > 0 && days[^1].P10 >= Enough * needed); day++)
            days.Add(Day(start.PlusDays(day), day, current, past));
        return new(
            days, needed, Math.Round(RuleUnit.DegF.FromSignalUnit(model.BaseC), 1),
            [.. past.Select(season => season.Year)],
            // By the sums themselves: those of the days are rounded.
            Enumerable.Range(0, current?.SumsC.Length ?? 0)
                .Where(day => current!.SumsC[day] >= model.RequiredDegreeDaysC)
                .Select(day => Day(start.PlusDays(day), day, current, past)).FirstOrDefault());
    }

    /// <summary>The springs of a record, as long as the chart.</summary>
    public static IReadOnlyCollection<HeatSeason> Seasons(
        Engine.Weather.DailySeries observed, Engine.Weather.Forecast? forecast, ThermalTime model) =>
        HeatSeason.Of(observed, forecast?.Days, model, MostDays);

    /// <summary>The last day with a sum of this year; null before its spring.</summary>
    public HeatDay? Latest => Days.LastOrDefault(day => day.SumF is not null);

    private static HeatDay Day(LocalDate date, int day, HeatSeason? current, List<HeatSeason> past)
    {
        double[] sums = [.. past.Select(season => InF(season.SumsC[day]))];
        return new(
            date, current is null || double.IsNaN(current.SumsC[day]) ? null : Math.Round(InF(current.SumsC[day])),
            day >= current?.ObservedDays, At(0.1), At(0.5), At(0.9));

        double? At(double share) => sums.Length == 0 ? null : Math.Round(Quantile.Of(sums, share));
    }

    private static double InF(double degreeDaysC) => RuleUnit.DegreeDaysF.FromSignalUnit(degreeDaysC);
}
