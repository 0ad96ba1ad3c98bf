using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>One value of one day as it was known on a moment, in the unit of its element.</summary>
public sealed record KnownReading
{
    public required LocalDate Date { get; init; }
    public required DailyElement Element { get; init; }
    public required double Value { get; init; }

    /// <summary>The flag of the source that rejects the value, or null for a value that may be used.</summary>
    public required char? QualityFlag { get; init; }

    /// <summary>When it became known; the beginning of time where that was not recorded.</summary>
    public required Instant KnownSince { get; init; }
}

/// <summary>A station's readings in the two times: the day they are of, and the moment they are known on.</summary>
internal static class KnownReadings
{
    /// <returns>One value a day and element at most, in the order of day and element.</returns>
    public static IQueryable<KnownReading> Of(WorkWindowsDb db, Station station, Instant asOf)
    {
        var current = db.StationReadings.AsNoTracking().Where(reading => reading.StationId == station.Id);
        // What is known now is asked for all the time, and needs neither a condition nor the other table.
        var known = asOf >= (station.RecordChangedAt ?? Instant.MinValue)
            ? Select(current)
            : Select(current.Where(reading => reading.KnownSince <= asOf)).Concat(db.SupersededReadings.AsNoTracking()
                .Where(reading => reading.StationId == station.Id
                    && reading.KnownSince <= asOf && reading.KnownUntil > asOf)
                .Select(reading => new KnownReading
                {
                    Date = reading.Date,
                    Element = reading.Element,
                    Value = reading.Value,
                    QualityFlag = reading.QualityFlag,
                    KnownSince = reading.KnownSince,
                }));
        return known.OrderBy(reading => reading.Date).ThenBy(reading => reading.Element);
    }

    private static IQueryable<KnownReading> Select(IQueryable<StationReading> readings) =>
        readings.Select(reading => new KnownReading
        {
            Date = reading.Date,
            Element = reading.Element,
            Value = reading.Value,
            QualityFlag = reading.QualityFlag,
            KnownSince = reading.KnownSince,
        });
}
