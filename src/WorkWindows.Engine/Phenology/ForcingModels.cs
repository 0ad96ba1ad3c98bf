using NodaTime;

namespace WorkWindows.Engine.Phenology;

/// <summary>
/// Thermal time with a soft base: a day's forcing rises along a sigmoid. Source: docs/rules/degree-days.md.
/// </summary>
/// <param name="Start">The first day whose forcing counts.</param>
/// <param name="SlopePerC">How fast forcing rises with temperature; negative, for warmth forces.</param>
/// <param name="MiddleC">The daily mean at which a day forces half as much as it can, °C.</param>
/// <param name="RequiredForcing">The forcing needed, days of the strongest.</param>
public sealed record Uniforc(AnnualDate Start, double SlopePerC, double MiddleC, double RequiredForcing)
{
    /// <summary>The day on which forcing reaches what is needed.</summary>
    /// <inheritdoc cref="ThermalTime.ReachedAt" path="/param"/>
    /// <inheritdoc cref="ThermalTime.ReachedAt" path="/returns"/>
    public int? ReachedAt(ReadOnlySpan<double> dailyMeansC) => Forcing.ReachedAt(
        dailyMeansC, meanC => Forcing.Sigmoid(SlopePerC * (meanC - MiddleC)), RequiredForcing);
}

/// <summary>
/// Chilling first, then forcing as of <see cref="Uniforc"/>, counted from the day on which the chill suffices.
/// </summary>
/// <param name="Start">The first day whose chill counts, in the autumn before.</param>
/// <param name="ChillCurvature">Of the square of the distance from <paramref name="ChillMiddleC"/>, 1/°C².</param>
/// <param name="ChillSlopePerC">Of that distance itself, 1/°C.</param>
/// <param name="ChillMiddleC">A daily mean that chills half as much as a day can, °C.</param>
/// <param name="RequiredChill">The chill needed, days of the strongest.</param>
/// <param name="ForcingSlopePerC">As of <see cref="Uniforc"/>.</param>
/// <param name="ForcingMiddleC">As of <see cref="Uniforc"/>, °C.</param>
/// <param name="RequiredForcing">As of <see cref="Uniforc"/>.</param>
/// <remarks>Source: docs/rules/degree-days.md.</remarks>
public sealed record Unichill(
    AnnualDate Start, double ChillCurvature, double ChillSlopePerC, double ChillMiddleC, double RequiredChill,
    double ForcingSlopePerC, double ForcingMiddleC, double RequiredForcing)
{
    /// <summary>The day on which the forcing after the chill reaches what is needed.</summary>
    /// <inheritdoc cref="ThermalTime.ReachedAt" path="/param"/>
    /// <inheritdoc cref="ThermalTime.ReachedAt" path="/returns"/>
    public int? ReachedAt(ReadOnlySpan<double> dailyMeansC)
    {
        if (Forcing.ReachedAt(dailyMeansC, ChillOf, RequiredChill) is not { } chilled)
            return null;
        return chilled + Forcing.ReachedAt(
            dailyMeansC[chilled..], meanC => Forcing.Sigmoid(ForcingSlopePerC * (meanC - ForcingMiddleC)),
            RequiredForcing);
    }

    private double ChillOf(double meanC)
    {
        var distanceC = meanC - ChillMiddleC;
        return Forcing.Sigmoid(ChillCurvature * distanceC * distanceC + ChillSlopePerC * distanceC);
    }
}

/// <summary>
/// Thermal time whose requirement falls with each cold day since the start: Cannell and Smith 1983.
/// </summary>
/// <param name="Start">The first day whose heat and cold count.</param>
/// <param name="BaseC">The daily mean above which heat counts and below which a day is a cold one, °C.</param>
/// <param name="RequiredAtLeast">The requirement after endless cold, degree-days in °C.</param>
/// <param name="RequiredBesides">What is needed besides without any cold, degree-days in °C.</param>
/// <param name="FallPerColdDay">The exponent of a cold day; negative, for cold lowers the requirement.</param>
/// <remarks>Source: docs/rules/degree-days.md.</remarks>
public sealed record AlternatingHeat(
    AnnualDate Start, double BaseC, double RequiredAtLeast, double RequiredBesides, double FallPerColdDay)
{
    /// <summary>Deciduous trees in general: Botta et al. 2000, Global Change Biology 6:709 (seen as quoted).</summary>
    public static AlternatingHeat Deciduous { get; } = new(new AnnualDate(1, 1), 5, -68, 638, -0.01);

    /// <summary>The heat needed after a number of cold days, degree-days in °C.</summary>
    public double RequiredDegreeDaysC(int coldDays) =>
        RequiredAtLeast + RequiredBesides * Math.Exp(FallPerColdDay * coldDays);

    /// <summary>The day on which the heat reaches what is needed after the cold days up to it.</summary>
    /// <inheritdoc cref="ThermalTime.ReachedAt" path="/param"/>
    /// <inheritdoc cref="ThermalTime.ReachedAt" path="/returns"/>
    public int? ReachedAt(ReadOnlySpan<double> dailyMeansC)
    {
        var (sum, coldDays) = (0.0, 0);
        for (var day = 0; day < dailyMeansC.Length; day++)
        {
            var aboveC = dailyMeansC[day] - BaseC;
            if (double.IsNaN(aboveC))
                return null;
            sum += Math.Max(0, aboveC);
            if (aboveC < 0)
                coldDays++;
            if (sum >= RequiredDegreeDaysC(coldDays))
                return day;
        }
        return null;
    }
}

/// <summary>Thermal time in which a long day's heat counts for more: the M1 model.</summary>
/// <param name="HeatOfDay">Start, base and requirement; the requirement is one of weighted degree-days.</param>
/// <param name="DayLengthPower">The power of the day's share of 24 hours; 0 is thermal time itself.</param>
/// <remarks>Source: docs/rules/degree-days.md.</remarks>
public sealed record DayLengthThermalTime(ThermalTime HeatOfDay, double DayLengthPower)
{
    /// <summary>The day on which the weighted heat reaches what is needed.</summary>
    /// <param name="dailyMeansC">Daily mean temperatures from the start on, °C, NaN for a day without.</param>
    /// <param name="dayLengthsHours">Hours from sunrise to sunset of the same days.</param>
    /// <inheritdoc cref="ThermalTime.ReachedAt" path="/returns"/>
    /// <exception cref="ArgumentException">There are not as many day lengths as means.</exception>
    public int? ReachedAt(ReadOnlySpan<double> dailyMeansC, ReadOnlySpan<double> dayLengthsHours)
    {
        if (dailyMeansC.Length != dayLengthsHours.Length)
            throw new ArgumentException($"{dailyMeansC.Length} means.", nameof(dayLengthsHours));
        var heat = new double[dailyMeansC.Length];
        for (var day = 0; day < heat.Length; day++)
            heat[day] = HeatOfDay.HeatOf(dailyMeansC[day]) * Math.Pow(dayLengthsHours[day] / 24, DayLengthPower);
        return Forcing.ReachedAt(heat, weighted => weighted, HeatOfDay.RequiredDegreeDaysC);
    }
}
