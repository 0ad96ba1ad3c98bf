using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Benchmarks;

/// <summary>A record of every element, as load: warm summers, cold winters and noise.</summary>
internal static class GeneratedRecord
{
    public static IEnumerable<DailyReading> Of(DaySpan days, Random random)
    {
        for (var day = 0; day < days.Count; day++)
        {
            var date = days[day];
            var warmthC = -15 * Math.Cos(2 * Math.PI * date.DayOfYear / 365.25);
            var meanC = 8 + warmthC + Noise(6);
            yield return new(date, DailyElement.MinTemperatureC, meanC - 6, null);
            yield return new(date, DailyElement.MaxTemperatureC, meanC + 6, null);
            yield return new(date, DailyElement.WindMps, 5 + Noise(4), null);
            yield return new(date, DailyElement.GustMps, 9 + Noise(6), null);
            yield return new(date, DailyElement.PrecipitationMm, Math.Max(0, Noise(12)), null);
            yield return new(date, DailyElement.SnowDepthCm, Math.Max(0, -2 * warmthC + Noise(10)), null);
            yield return new(date, DailyElement.MinHumidityPercent, 50 + Noise(30), null);
        }

        double Noise(double width) => (random.NextDouble() - 0.5) * 2 * width;
    }
}
