using System.Globalization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;
using NpgsqlTypes;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Stores readings of a station in bulk, and keeps those that they take the place of.</summary>
public sealed class StationReadings(WorkWindowsDb db, IClock clock)
{
    /// <summary>
    /// Tables that were just filled have no statistics yet, and the planner would take them for small and compare each
    /// row with each.
    /// </summary>
    private const string Receive = """
        create temporary table incoming_readings (
          element smallint not null, date date not null, value double precision not null, quality_flag character(1))
          on commit drop;
        set local enable_nestloop = off
        """;

    private const string Copy =
        "copy incoming_readings (element, date, value, quality_flag) from stdin (format binary)";

    /// <summary>The days of what comes, so that a correction of one day does not look through decades.</summary>
    private const string IsSame = """
        kept.station_id = @station and kept.date between @first and @last
          and kept.date = incoming.date and kept.element = incoming.element
        """;

    private const string IsAnother = $"""
        {IsSame}
          and (kept.value, kept.quality_flag) is distinct from (incoming.value, incoming.quality_flag)
        """;

    /// <summary>What was replaced in the moment in which it came was never what was known.</summary>
    private const string Supersede = $"""
        insert into superseded_readings (station_id, element, date, known_since, known_until, value, quality_flag)
        select kept.station_id, kept.element, kept.date, kept.known_since, @now, kept.value, kept.quality_flag
        from station_readings kept, incoming_readings incoming
        where {IsAnother} and kept.known_since < @now
        """;

    private const string Change = $"""
        update station_readings kept
        set value = incoming.value, quality_flag = incoming.quality_flag, known_since = @now
        from incoming_readings incoming
        where {IsAnother}
        """;

    private const string Add = $"""
        insert into station_readings (station_id, element, date, value, quality_flag, known_since)
        select @station, element, date, value, quality_flag, @now from incoming_readings incoming
        where not exists (
          select from station_readings kept where {IsSame})
        order by date, element
        """;

    private const string Forget = "drop table incoming_readings; set local enable_nestloop = on";

    /// <summary>
    /// Adds readings to a station's record, in the place of those it has of the same day and element, which are kept as
    /// what was known until now. Must run in an <see cref="OrganizationChange"/>, so that nobody adds to the same
    /// record meanwhile.
    /// </summary>
    /// <param name="station">A station that is tracked; its coverage is brought up to date, the caller saves.</param>
    /// <param name="readings">Each day and element once.</param>
    /// <param name="cancellation">Ends the queries.</param>
    /// <exception cref="ClockSetBackException">The record changed later than the clock says it is.</exception>
    public async Task<ImportCounts> MergeAsync(
        Station station, IReadOnlyCollection<DailyReading> readings, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        if (station.RecordChangedAt is { } changedAt && changedAt > now)
            throw new ClockSetBackException(now, changedAt);
        if (readings.Count == 0)
            return new(0, 0, 0);
        var connection = (NpgsqlConnection)db.Database.GetDbConnection();
        (string Name, object Value)[] parameters =
        [
            ("station", station.Id),
            ("now", now),
            ("first", readings.Min(reading => reading.Date)),
            ("last", readings.Max(reading => reading.Date)),
        ];
        await ExecuteAsync(Receive);
        await CopyAsync(connection, readings, cancellation);
        await ExecuteAsync(Supersede, parameters);
        var updated = await ExecuteAsync(Change, parameters);
        var created = await ExecuteAsync(Add, parameters);
        await ExecuteAsync(Forget);
        if (created + updated > 0)
        {
            station.RecordVersion++;
            station.RecordChangedAt = now;
            await StationCoverage.UpdateAsync(db, station, readings, cancellation);
        }
        return new(created, updated, readings.Count - created - updated);

        async Task<int> ExecuteAsync(string sql, params (string Name, object Value)[] values)
        {
            await using var command = new NpgsqlCommand(sql, connection);
            foreach (var (name, value) in values)
                command.Parameters.AddWithValue(name, value);
            return await command.ExecuteNonQueryAsync(cancellation);
        }
    }

    private static async Task CopyAsync(
        NpgsqlConnection connection, IEnumerable<DailyReading> readings, CancellationToken cancellation)
    {
        await using var writer = await connection.BeginBinaryImportAsync(Copy, cancellation);
        foreach (var reading in readings)
        {
            // Written to a buffer; waiting for each value would take longer than sending all of them.
            writer.StartRow();
            writer.Write((short)reading.Element, NpgsqlDbType.Smallint);
            writer.Write(reading.Date.ToDateOnly(), NpgsqlDbType.Date);
            writer.Write(reading.Value, NpgsqlDbType.Double);
            if (reading.QualityFlag is { } flag)
                writer.Write(flag.ToString(CultureInfo.InvariantCulture), NpgsqlDbType.Char);
            else
                writer.WriteNull();
        }
        await writer.CompleteAsync(cancellation);
    }
}
