using System.Runtime.InteropServices;
using NodaTime;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Signals;

/// <summary>Computes every signal of a weather point once, to be shared by the tasks of all its parcels.</summary>
public static class SignalSetBuilder
{
    /// <summary>
    /// Signals of every kind, and the events of each year that the span touches and that can be told.
    /// </summary>
    /// <param name="point">The place.</param>
    /// <param name="span">The days in <paramref name="zone"/>.</param>
    /// <param name="observed">The record of the place; years before the span serve the prediction of leaf-out.</param>
    /// <param name="forecast">Used on days that were not observed; null when there is none.</param>
    /// <param name="zone">The time zone of the place.</param>
    /// <param name="shift">The hours whose light and dark minutes are counted.</param>
    /// <param name="alerts">The alerts of weather services.</param>
    /// <returns>A day neither observed nor forecast has no value: weather is never guessed.</returns>
    public static SignalSet Build(
        WeatherPoint point, DaySpan span, DailySeries observed, Forecast? forecast, DateTimeZone zone, WorkShift shift,
        AlertReport alerts)
    {
        var light = ShiftLight.Over(span, shift, zone, point.LatitudeDeg, point.LongitudeDeg);
        Signal[] signals =
        [
            .. DerivedSignals.OfWeather(span, (element, days) => Measured(element, days, observed, forecast)),
            .. Enum.GetValues<AlertKind>().Select(kind => Alert(kind, span, alerts)),
            ByCalendar(SignalKind.DarkShiftMinutes, span, light.DarkMinutes),
            ByCalendar(SignalKind.LightShiftMinutes, span, light.LightMinutes),
        ];
        var (first, last) = (span.First.Year, span.Last.Year);
        var events = LeafOut.Predict(first, last, observed, forecast?.Days)
            .Concat(SpringEvents.Of(first, last, observed, forecast?.Days, point.LatitudeDeg));
        return SignalSet.Of(point.Name, span, signals, events, forecast?.IssuedAt);
    }

    private static Signal Measured(DailyElement element, DaySpan span, DailySeries observed, Forecast? forecast)
    {
        var values = new double[span.Count];
        var bases = new Basis[span.Count];
        Array.Fill(values, double.NaN);
        // The forecast first: what was observed then takes its place.
        Lay(element, forecast?.Days[element], _ => Basis.Forecast, span, values, bases);
        Lay(element, observed[element], day => OfRecord(observed[element]!, day), span, values, bases);
        return new(SignalOf(element), span, ImmutableCollectionsMarshal.AsImmutableArray(values),
            ImmutableCollectionsMarshal.AsImmutableArray(bases));
    }

    /// <summary>The signal that an element of a record is.</summary>
    public static SignalKind SignalOf(DailyElement element) => element switch
    {
        DailyElement.MinTemperatureC => SignalKind.MinTemperatureC,
        DailyElement.MaxTemperatureC => SignalKind.MaxTemperatureC,
        DailyElement.WindMps => SignalKind.WindMps,
        DailyElement.GustMps => SignalKind.GustMps,
        DailyElement.PrecipitationMm => SignalKind.PrecipitationMm,
        DailyElement.SnowDepthCm => SignalKind.SnowDepthCm,
        DailyElement.MinHumidityPercent => SignalKind.MinHumidityPercent,
        DailyElement.ThunderChancePercent => SignalKind.ThunderChancePercent,
    };

    private static void Lay(
        DailyElement element, DailyColumn? column, Func<LocalDate, Basis> basis, DaySpan span, double[] values,
        Basis[] bases)
    {
        if (column is null)
            return;
        var known = new double[span.Count];
        column.CopyTo(span, known);
        for (var day = 0; day < known.Length; day++)
        {
            if (double.IsNaN(known[day]))
                continue;
            values[day] = column.ReadsUsUnits ? AsRead.Restore(element, known[day]) : known[day];
            bases[day] = basis(span[day]);
        }
    }

    private static Basis OfRecord(DailyColumn column, LocalDate day) =>
        column.IsOwn(day) ? Basis.Observed : Basis.Interpolated;

    private static Signal Alert(AlertKind kind, DaySpan span, AlertReport report)
    {
        var values = new double[span.Count];
        var bases = new Basis[span.Count];
        Array.Fill(bases, Basis.Alert);
        for (var day = 0; day < span.Count; day++)
        {
            var date = span[day];
            if (report.Alerts.Any(alert => alert.Kind == kind && alert.First <= date && date <= alert.Last))
                values[day] = 1;
            else if (report.NotKnown?.Contains(date) == true)
                (values[day], bases[day]) = (double.NaN, Basis.Missing);
        }
        return new(SignalOf(kind), span, ImmutableCollectionsMarshal.AsImmutableArray(values),
            ImmutableCollectionsMarshal.AsImmutableArray(bases));
    }

    private static SignalKind SignalOf(AlertKind kind) => kind switch
    {
        AlertKind.RedFlag => SignalKind.RedFlagAlert,
        AlertKind.Wind => SignalKind.WindAlert,
        AlertKind.WinterStorm => SignalKind.WinterStormAlert,
        AlertKind.Thunderstorm => SignalKind.ThunderstormAlert,
    };

    private static Signal ByCalendar(SignalKind kind, DaySpan span, double[] values)
    {
        var bases = new Basis[span.Count];
        Array.Fill(bases, Basis.Calendar);
        return new(kind, span, ImmutableCollectionsMarshal.AsImmutableArray(values),
            ImmutableCollectionsMarshal.AsImmutableArray(bases));
    }
}
